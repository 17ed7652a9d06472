/* stead-build-room.c - room for the animals by cited allowances, and who may do which work. */
#include "config.h"

#include "answer/stead-build-private.h"
#include "answer/stead-limits.h"
#include "answer/stead-rules.h"
#include "core/stead-pen-room.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FT STEAD_FOOT_M

static const char * const animals[] = { "sheep", "goat", "wether", "laying_hen", NULL };

const char * const *
stead_build_animals (void)
{
  return animals;
}

const char *
stead_build_animal_name (const char *animal)
{
  if (g_strcmp0 (animal, "sheep") == 0)
    return C_("animals", "Sheep");
  if (g_strcmp0 (animal, "goat") == 0)
    return C_("animals", "Goats");
  if (g_strcmp0 (animal, "wether") == 0)
    return C_("animals", "Wethers");
  if (g_strcmp0 (animal, "laying_hen") == 0)
    return C_("animals", "Laying hens");
  return animal;
}

/* --- room --------------------------------------------------------------------------- */

static void
room_free (gpointer data)
{
  SteadBuildRoom *room = data;

  g_free (room->what);
  g_free (room->need);
  g_free (room->has);
  g_free (room->source);
  g_free (room);
}

/* The table has no figure for sheep: the one for goats stands in, and says so. */
static const SteadLimit *
find_row (const SteadBuild *build,
          const char       *measure,
          gboolean         *out_stand_in)
{
  const SteadLimit *chosen = build->housing != NULL ? stead_limit_table_by_id (stead_rules_get (), build->housing) : NULL;
  const SteadLimit *row;

  *out_stand_in = FALSE;
  if (chosen != NULL && g_str_equal (chosen->measure, measure))
    return chosen;
  row = stead_rules_figure ("space", build->animal, measure);
  if (row == NULL && g_str_equal (build->animal, "sheep"))
    {
      row = stead_rules_figure ("space", "goat", measure);
      *out_stand_in = row != NULL;
    }
  return row;
}

static char *
source_text (const SteadLimit *row,
             gboolean          stand_in)
{
  g_autofree char *source = NULL;

  if (row == NULL)
    return g_strdup (_("the farm's own figure"));
  source = stead_limits_source (row);
  /* Translators: a source; what it says is about goats, and is used for sheep. */
  return stand_in ? g_strdup_printf (_("%s (for goats; ask the extension office about sheep)"), source)
                  : g_steal_pointer (&source);
}

static double
in_base (const SteadLimit *row)
{
  if (g_str_equal (row->unit, "sqft"))
    return row->value * STEAD_SQUARE_FOOT_M2;
  if (g_str_equal (row->unit, "in"))
    return row->value * FT / 12;
  return g_str_equal (row->unit, "gal/d") ? row->value * STEAD_GALLON_L : row->value;
}

static SteadBuildRoom *
add_room (SteadBuildAnswer *self,
          const char       *what,
          char             *need,
          char             *has,
          gboolean          is_short,
          char             *source)
{
  SteadBuildRoom *room = g_new0 (SteadBuildRoom, 1);

  *room = (SteadBuildRoom) { g_strdup (what), need, has, is_short, source };
  g_ptr_array_add (self->rooms, room);
  return room;
}

static void
add_area (SteadBuildAnswer *self,
          const char       *what,
          const char       *measure,
          double            own_m2,
          double            has_m2)
{
  SteadUnitSystem units = self->farm->units;
  gboolean stand_in = FALSE;
  const SteadLimit *row = isnan (own_m2) ? find_row (self->build, measure, &stand_in) : NULL;
  SteadPenGroup group = { self->build->head, isnan (own_m2) && row != NULL ? in_base (row) : own_m2 };
  double need = stead_pen_need (&group, 1);

  if (!isfinite (need))
    return;
  add_room (self, what, stead_build_area_text (need, units), stead_build_area_text (has_m2, units),
            has_m2 < need - 1e-6, source_text (row, stand_in));
}

static void
add_plain (SteadBuildAnswer *self,
           const char       *what,
           const char       *measure)
{
  SteadUnitSystem units = self->farm->units;
  gboolean stand_in, is_water = g_str_equal (measure, "water_per_head");
  const SteadLimit *row = find_row (self->build, measure, &stand_in);
  double need;
  g_autofree char *number = NULL;

  if (row == NULL)
    return;
  need = self->build->head * in_base (row);
  number = stead_number_format (units == STEAD_UNITS_US ? need / STEAD_GALLON_L : need, 0);
  add_room (self, what,
            !is_water ? stead_build_length_text (need, units)
            : units == STEAD_UNITS_US ? g_strdup_printf (_("%s gal a day"), number)
                                      : g_strdup_printf (_("%s L a day"), number),
            NULL, FALSE, source_text (row, stand_in));
}

void
stead_build_make_rooms (SteadBuildAnswer *self)
{
  const SteadBuild *build = self->build;
  double yard;

  self->rooms = g_ptr_array_new_with_free_func (room_free);
  if (build->head == 0 || build->animal == NULL || self->takeoff == NULL || build->kind == STEAD_BUILD_LIST)
    return;
  /* The yard lies beside the roofed floor; a run is a yard itself. */
  yard = build->kind == STEAD_BUILD_RUN ? self->takeoff->area_m2 : self->takeoff->area_m2 - self->takeoff->shelter_m2;
  if (build->kind == STEAD_BUILD_PEN)
    add_area (self, _("Floor under a roof"), "housed_area_per_head", build->housed_each_m2, self->takeoff->shelter_m2);
  if (build->kind != STEAD_BUILD_HOOP)
    add_area (self, _("Yard"), "yard_area_per_head", build->yard_each_m2, yard);
  add_plain (self, _("Feeder, when all eat at once"), "feeder_per_head");
  add_plain (self, _("Water on the hottest days"), "water_per_head");
}

/* --- work ----------------------------------------------------------------------------- */

static const struct { const char *word, *name; } tasks[] = {
  { "set_posts_by_hand", NC_("task", "posts set by hand") },
  { "hand_post_hole_digger", NC_("task", "post hole digger worked by hand") },
  { "power_post_hole_digger", NC_("task", "post hole digger with an engine") },
  { "power_post_driver", NC_("task", "post driver with an engine") },
  { "repair_fence_by_hand", NC_("task", "fence put up or mended by hand") },
  { "carpentry_without_power_saw", NC_("task", "carpentry without a power saw") },
  { "power_circular_saw", NC_("task", "circular saw with a motor") },
  { "power_band_saw", NC_("task", "band saw with a motor") },
  { "power_chain_saw", NC_("task", "chain saw with a motor") },
  { "power_wood_machine", NC_("task", "another wood machine with a motor") },
  { "ladder_or_scaffold", NC_("task", "ladder or scaffold") },
  { "roofing", NC_("task", "roofing") },
  { "excavation", NC_("task", "digging with a machine, trench or pit") },
  { "trencher", NC_("task", "trencher") },
  { "tractor", NC_("task", "tractor") },
  { "fork_lift", NC_("task", "fork lift") },
};

const char * const *
stead_build_tasks (void)
{
  static const char *words[G_N_ELEMENTS (tasks) + 1];

  for (gsize i = 0; i < G_N_ELEMENTS (tasks); i++)
    words[i] = tasks[i].word;
  return words;
}

const char *
stead_build_task_name (const char *task)
{
  for (gsize i = 0; i < G_N_ELEMENTS (tasks); i++)
    if (g_strcmp0 (tasks[i].word, task) == 0)
      return g_dpgettext2 (GETTEXT_PACKAGE, "task", tasks[i].name);
  return task;
}

static void
work_free (gpointer data)
{
  SteadBuildWork *work = data;

  g_free (work->text);
  g_free (work);
}

static char *
work_text (const SteadBuildWork *work)
{
  const SteadBuildPhase *phase = work->phase;

  if (work->flag == STEAD_TOOL_ALLOW)
    return NULL;
  if (work->flag == STEAD_TOOL_ALLOW_SUPERVISED)
    return g_strdup_printf (_("“%s”: the youngest is %d, so an adult watches closely. The advisor decides; state law and school rules may ask for more."),
                            phase->name, phase->age_years);
  return g_strdup_printf (_("“%s”: not for those of %d. The age for it is %d (%s). An adult does it, or another tool is used; the advisor decides."),
                          phase->name, phase->age_years, work->row != NULL ? (int) work->row->value : 18,
                          work->row != NULL ? work->row->source : "");
}

void
stead_build_make_works (SteadBuildAnswer *self)
{
  self->works = g_ptr_array_new_with_free_func (work_free);
  for (guint i = 0; i < self->phases->len; i++)
    {
      SteadBuildWork *work = g_new0 (SteadBuildWork, 1);
      SteadBuildPhase *phase = self->phases->pdata[i];
      SteadToolUse use = { STEAD_WORK_BUILDING, phase->task, phase->age_years, NAN, NAN, FALSE };

      work->phase = phase;
      self->hours += phase->hours;
      self->worked_h += phase->worked_h;
      /* A task that no list knows has no flag. */
      if (phase->task != NULL && phase->age_years > 0 &&
          stead_tool_judge (stead_rules_get (), &use, &work->row, &work->flag, NULL))
        work->text = work_text (work);
      g_ptr_array_add (self->works, work);
    }
}
