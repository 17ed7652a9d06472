/* stead-check-side-text.c - what stands beside a check: why, from where, with what, how often, who. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- why ---------------------------------------------------------------------------- */

static gboolean
is_heating (SteadCheckStage stage)
{
  return stage == STEAD_CHECK_STAGE_COOK || stage == STEAD_CHECK_STAGE_REHEAT;
}

static const char *
reason_of (const char      *hazard,
           SteadCheckStage  stage)
{
  static const struct { const char *hazard, *heating, *other; } reasons[] = {
    { "salmonella", N_("Salmonella can live through less heat."), N_("Salmonella grows in eggs that get warm.") },
    { "pathogen_survival", N_("Germs can live through less heat."), N_("Germs can live through less heat.") },
    { "pathogen_growth", N_("Germs that grew in the cold or warmth must not live on."),
      N_("Germs grow fast in food that is neither hot nor cold.") },
    { "listeria_growth", N_("Listeria grows even in the cold, so the days are counted."),
      N_("Listeria grows even in the cold, so the days are counted.") },
    { "spore_growth", N_("Spores live through cooking, and grow when the food gets lukewarm."),
      N_("Spores live through cooking, and grow in food that cools slowly.") },
    { "toxin", N_("Germs can leave a poison that heat does not undo."),
      N_("Germs can leave a poison that heat does not undo.") },
    { "botulism", N_("The germ of botulism grows in sealed food that is not acid enough. Nobody sees or smells it."),
      N_("The germ of botulism grows in sealed food that is not acid enough. Nobody sees or smells it.") },
    { "parasites", N_("Parasites live in raw fish until long cold kills them."),
      N_("Parasites live in raw fish until long cold kills them.") },
    { "contamination", N_("Germs come to food from hands, tools and surfaces."),
      N_("Germs come to food from hands, tools and surfaces.") },
    { "allergens", N_("A trace is enough to make some people very ill."),
      N_("A trace is enough to make some people very ill.") },
    { "ill_worker", N_("A helper who is ill passes it on with the food."),
      N_("A helper who is ill passes it on with the food.") },
    { "susceptible_eater", N_("Young children, old and ill people get sick from fewer germs."),
      N_("Young children, old and ill people get sick from fewer germs.") },
    { "false_reading", N_("A thermometer that is off hides food that is too warm or too cold."),
      N_("A thermometer that is off hides food that is too warm or too cold.") },
    { "spoilage", N_("Food spoils before it makes ill; the date tells when."),
      N_("Food spoils before it makes ill; the date tells when.") },
    { "misleading_label", N_("Who buys it must know what is in it."), N_("Who buys it must know what is in it.") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (reasons); i++)
    if (g_str_equal (reasons[i].hazard, hazard))
      return is_heating (stage) ? _(reasons[i].heating) : _(reasons[i].other);
  return "";
}

char *
stead_check_reason_text (const SteadCheckLine *line)
{
  if (line->kind == STEAD_CHECK_LINE_EGG_CARTON)
    return g_strdup (_("Who cooks the eggs at home must know how to keep and cook them."));
  if (line->kind == STEAD_CHECK_LINE_ADVISORY)
    return g_strdup (_("Germs may live on in it: who eats it must be able to choose."));
  return g_strdup (reason_of (((const SteadLimit *) line->rows->pdata[0])->hazard, line->stage));
}

/* The source of a row, without its name if the row before has the same one: "§3-501.14(A)(2)". */
static char *
source_after (const SteadLimit *row,
              const SteadLimit *before)
{
  gboolean same = before != NULL && g_str_equal (row->source, before->source) && g_str_equal (row->version, before->version)
                  && g_str_equal (row->status, before->status) && !g_str_equal (row->status, "practice")
                  && !g_str_equal (row->status, "memory");

  return same ? g_strdup (row->where) : stead_limits_source (row);
}

/* Each source once, in the order of the rows. */
char *
stead_check_sources_text (const GPtrArray *rows)
{
  g_autoptr(GPtrArray) sources = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  const SteadLimit *before = NULL;

  for (guint i = 0; i < rows->len; i++)
    {
      const SteadLimit *row = rows->pdata[i];

      if (!g_hash_table_add (seen, stead_limits_source (row)))
        continue;
      g_ptr_array_add (sources, source_after (row, before));
      before = row;
    }
  g_ptr_array_add (sources, NULL);
  return g_strjoinv ("; ", (char **) sources->pdata);
}

/* --- how ------------------------------------------------------------------------------ */

char *
stead_check_tool_text (const SteadCheckLine *line)
{
  switch (line->tool)
    {
    case STEAD_CHECK_TOOL_PROBE:
      if (line->kind == STEAD_CHECK_LINE_THERMOMETER_ICE || line->kind == STEAD_CHECK_LINE_THERMOMETER_BOIL)
        return g_strdup (_("each thermometer that is used"));
      if (line->measure != NULL && !g_str_equal (line->measure, "food_temp") && !g_str_has_prefix (line->measure, "start"))
        return g_strdup (_("a thermometer in the water"));
      return g_strdup (_("a thin probe, in the thickest part"));
    case STEAD_CHECK_TOOL_AIR: return g_strdup (_("a thermometer that hangs in the air"));
    case STEAD_CHECK_TOOL_STRIP: return g_strdup (_("a test strip and a thermometer"));
    case STEAD_CHECK_TOOL_PH_METER: return g_strdup (_("a pH meter that was set with two buffers"));
    case STEAD_CHECK_TOOL_INDICATOR: return g_strdup (_("a heat strip, or a thermometer that keeps its highest reading"));
    case STEAD_CHECK_TOOL_CLOCK: return g_strdup (_("a clock"));
    case STEAD_CHECK_TOOL_NONE:
    default: return NULL;
    }
}

char *
stead_check_often_text (const SteadCheckLine *line)
{
  g_autofree char *span = NULL;

  switch (line->often)
    {
    case STEAD_CHECK_OFTEN_ONCE: return g_strdup (_("once, before the work begins"));
    case STEAD_CHECK_OFTEN_DELIVERY: return g_strdup (_("each time some comes in"));
    case STEAD_CHECK_OFTEN_PORTION: return g_strdup (_("each pot, pan or order"));
    case STEAD_CHECK_OFTEN_TASK: return g_strdup (_("the whole time"));
    case STEAD_CHECK_OFTEN_ENDS: return g_strdup (_("when it leaves and when it arrives"));
    case STEAD_CHECK_OFTEN_END: return g_strdup (_("when the work is over"));
    case STEAD_CHECK_OFTEN_EVERY:
    default:
      break;
    }
  if (line->often_limit == NULL)
    return g_strdup (_("the whole time"));
  span = stead_check_span_text (stead_limit_value_in (line->often_limit, "s"));
  /* Translators: "2 hours", "60 minutes". */
  return g_strdup_printf (_("every %s"), span);
}

char *
stead_check_who_text (const SteadCheckLine *line)
{
  switch (line->who)
    {
    case STEAD_CHECK_WHO_EVERYONE: return g_strdup (_("everyone"));
    case STEAD_CHECK_WHO_LEAD: return g_strdup (_("the person in charge"));
    case STEAD_CHECK_WHO_COOK: return g_strdup (_("the cook"));
    case STEAD_CHECK_WHO_SERVER:
    default: return g_strdup (_("who serves or sells"));
    }
}

/* The recipe's own limit stands in °C. */
char *
stead_check_own_text (const SteadCheckLine *line,
                      SteadUnitSystem       units)
{
  const SteadUnit *degree = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units);
  g_autofree char *least = isnan (line->own_least_c) ? NULL : stead_quantity_format (line->own_least_c, degree);
  g_autofree char *most = isnan (line->own_most_c) ? NULL : stead_quantity_format (line->own_most_c, degree);
  g_autofree char *time = line->own_hold_s > 0 ? stead_check_span_text (line->own_hold_s) : NULL;

  if (least != NULL && most != NULL)
    return g_strdup_printf (_("The recipe asks for %1$s to %2$s."), least, most);
  if (least != NULL && time != NULL)
    return g_strdup_printf (_("The recipe asks for at least %1$s for %2$s."), least, time);
  if (least != NULL)
    return g_strdup_printf (_("The recipe asks for at least %s."), least);
  if (most != NULL)
    return g_strdup_printf (_("The recipe asks for at most %s."), most);
  return NULL;
}

const char *
stead_check_stage_name (SteadCheckStage stage)
{
  static const char * const names[STEAD_N_CHECK_STAGES] = {
    [STEAD_CHECK_STAGE_BEFORE] = N_("Before the work"), [STEAD_CHECK_STAGE_RECEIVE] = N_("What comes in"),
    [STEAD_CHECK_STAGE_PREPARE] = N_("Preparing"), [STEAD_CHECK_STAGE_COOK] = N_("Cooking"),
    [STEAD_CHECK_STAGE_COOL] = N_("Cooling"), [STEAD_CHECK_STAGE_REHEAT] = N_("Heating again"),
    [STEAD_CHECK_STAGE_HOLD] = N_("Holding"), [STEAD_CHECK_STAGE_CARRY] = N_("Carrying"),
    [STEAD_CHECK_STAGE_SERVE] = N_("Serving and selling"), [STEAD_CHECK_STAGE_AFTER] = N_("After the work"),
  };

  g_return_val_if_fail ((gsize) stage < G_N_ELEMENTS (names), "");
  return _(names[stage]);
}
