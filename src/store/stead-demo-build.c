/* stead-demo-build.c - the pen that the demo farm raises money for. */
#include "config.h"

#include <math.h>

#include "store/stead-build-repo.h"
#include "store/stead-demo-writer-private.h"

#define FT 0.3048

static gboolean
write_build (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  const char *group = what;
  g_autoptr(SteadBuild) build = stead_build_new (STEAD_BUILD_PEN);
  double length = FT * stead_demo_number (reader, group, "length_ft");
  double width = FT * stead_demo_number (reader, group, "width_ft");
  double gate = FT * stead_demo_number (reader, group, "gate_ft");
  SteadFenceGate opening = { 1, (width - gate) / 2, gate };
  g_autofree char *fund = stead_demo_text (reader, group, "fund");

  build->name = g_strdup (stead_demo_group_name (group));
  build->animal = stead_demo_text (reader, group, "animal");
  build->head = (int) stead_demo_number (reader, group, "head");
  build->begun_on = writer->story->today - (int) stead_demo_number (reader, group, "begun_days");
  build->goal_on = writer->story->today + (int) stead_demo_number (reader, group, "goal_days");
  build->fund_id = stead_demo_id_of (writer, "fund", fund);
  if (!stead_demo_sound (writer, error))
    return FALSE;
  stead_build_set_rectangle (build, length, width);
  g_array_append_val (build->gates, opening);
  return stead_build_repo_save (writer->store, build, error);
}

gboolean
stead_demo_plan_builds (SteadDemoWriter  *writer,
                        GError          **error)
{
  return stead_demo_write_groups (writer, "build", write_build, error);
}
