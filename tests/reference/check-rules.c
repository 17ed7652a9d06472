/* check-rules.c - the topics on ages, papers, privacy, standards and cash, and the figures of
 * handbooks and regulations that the program keeps in its tables of rules. */
#include "check-food.h"

#include "core/stead-record.h"
#include "core/stead-work-rules.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

#define RULES "/farm/steading/Steading/rules"

static const SteadLimitTable *
rules (void)
{
  static SteadLimitTable *table;
  g_auto(GStrv) names = NULL;

  if (table != NULL)
    return table;
  table = stead_limit_table_new ();
  names = g_resources_enumerate_children (RULES, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  for (gsize i = 0; names != NULL && names[i] != NULL; i++)
    {
      g_autofree char *path = g_strconcat (RULES "/", names[i], NULL);
      g_autoptr(GBytes) csv = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
      g_autoptr(GError) error = NULL;

      if (!stead_limit_table_add_csv (table, names[i], csv, &error))
        g_error ("%s", error->message);
    }
  return table;
}

/* The rule's value, or its word as the answer. */
static double
answer_rule (CheckRow             *row,
             const char           *process,
             const char           *subject,
             const char           *measure,
             const SteadLimitFact *facts)
{
  g_autoptr(GError) error = NULL;
  const SteadLimit *rule = stead_limit_table_find (rules (), process, subject, measure, facts, &error);

  if (rule == NULL)
    return check_answer_none (row, error);
  return rule->word != NULL ? check_answer_word (row, rule->word) : rule->value;
}

/* tool age flag */

static const char * const works[] = { "farm", "non_farm", "building", NULL };

static double
tool_rule (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "work", check_one_of (row, "work", works, -1), 0 }, { NULL } };

  return answer_rule (row, "age", check_text (row, "task"), check_ask_name (row), facts);
}

/* Not in the list of what is not hazardous: then it is, if it has an age. */
static double
tool_hazardous (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "work", check_one_of (row, "work", works, -1), 0 }, { NULL } };
  const char *task = check_text (row, "task");

  if (stead_limit_table_find (rules (), "age", task, "min_age", facts, NULL) != NULL)
    return check_answer_word (row, "yes");
  return tool_rule (row);
}

static double
tool_flag (CheckRow *row)
{
  static const char * const words[] = {
    [STEAD_TOOL_ALLOW] = "allow", [STEAD_TOOL_ALLOW_SUPERVISED] = "allow_supervised", [STEAD_TOOL_BLOCK] = "block",
  };
  SteadToolUse use = {
    .kind = (SteadWorkKind) check_word (row, "work", works, -1),
    .task = check_text (row, "task"),
    .age_y = check_number (row, "age_y"),
    .height_ft = check_number_or (row, "height_ft", NAN),
    .power_hp = check_number_or (row, "power_hp", NAN),
    .exemption = check_yes (row, "exemption_on_file", 0),
  };
  g_autoptr(GError) error = NULL;
  SteadToolFlag flag;

  if (!stead_tool_judge (rules (), &use, NULL, &flag, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, words[flag]);
}

static const CheckAsk tool_asks[] = {
  { "min_age", "y", tool_rule },
  { "hazardous_under_16", "text", tool_hazardous },
  { "max_height_under_16", "ft", tool_rule },
  { "max_power_under_16", "PTO hp", tool_rule },
  { "flag", "text", tool_flag },
  { NULL }
};

/* farm work by age, volunteer hour rate */

static double
farm_condition (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "age_y", NULL, check_number (row, "age_y") }, { NULL } };

  return answer_rule (row, "age", "farm_work", "condition", facts);
}

static const CheckAsk farm_asks[] = {
  { "condition", "text", farm_condition },
  { NULL }
};

static double
volunteer_rate (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "year", NULL, check_number (row, "year") }, { NULL } };

  return 100 * answer_rule (row, "value", "volunteer_hour", "rate", facts);
}

static const CheckAsk rate_asks[] = {
  { "rate", "USD/h", volunteer_rate },
  { NULL }
};

/* standards count, standards code pattern */

static double
standards_rule (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "edition", NULL, check_number (row, "edition") }, { NULL } };
  gboolean all = g_str_equal (check_ask_name (row), "pathways");

  if (all && check_has (row, "prefix"))
    return check_bad_input (row, "prefix");
  return answer_rule (row, "standards", all ? "any" : check_text (row, "prefix"), check_ask_name (row), facts);
}

/* All but the practices and the skills that every pathway shares. */
static double
pathway_standards (CheckRow *row)
{
  static const char * const pathways[] = { "ABS", "AS", "BS", "ESS", "FPP", "NRS", "PS", "PST" };
  const SteadLimitFact facts[] = { { "edition", NULL, check_number (row, "edition") }, { NULL } };
  double sum = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (pathways); i++)
    sum += answer_rule (row, "standards", pathways[i], "standards", facts);
  return sum;
}

static const CheckAsk standards_asks[] = {
  { "pathways", "count", standards_rule },
  { "standards", "count", standards_rule },
  { "pathway_standards", "count", pathway_standards },
  { NULL }
};

static double
code_level (CheckRow *row)
{
  static const char * const words[] = {
    [STEAD_STANDARD_NONE] = "reject", [STEAD_STANDARD_STANDARD] = "standard",
    [STEAD_STANDARD_INDICATOR] = "indicator", [STEAD_STANDARD_MEASUREMENT] = "measurement",
  };

  return check_answer_word (row, words[stead_standard_level (check_text (row, "code"))]);
}

static const CheckAsk code_asks[] = {
  { "level", "text", code_level },
  { NULL }
};

/* event points */

static double
event_points (CheckRow *row)
{
  gsize n = 0;
  const double *parts = check_list (row, "part_points", &n);

  return stead_event_points (parts, n, check_number_or (row, "members", 0), check_number_or (row, "member_points", 0));
}

static const CheckAsk event_asks[] = {
  { "total", "points", event_points },
  { NULL }
};

/* record rule, privacy field, education record, release log, export default */

static double
record_rule (CheckRow *row)
{
  return answer_rule (row, "record", check_text (row, "action"), "allowed", NULL);
}

static const CheckAsk record_asks[] = {
  { "allowed", "text", record_rule },
  { NULL }
};

static double
privacy_field (CheckRow *row)
{
  return answer_rule (row, "privacy", check_text (row, "field"), "directory_information", NULL);
}

static const CheckAsk field_asks[] = {
  { "directory_information", "text", privacy_field },
  { NULL }
};

static double
education_record (CheckRow *row)
{
  const SteadLimitFact facts[] = {
    { "about_student", check_yes (row, "about_student", -1) ? "yes" : "no", 0 },
    { "kept_by_school", check_yes (row, "kept_by_school", -1) ? "yes" : "no", 0 },
    { NULL },
  };

  return answer_rule (row, "privacy", "document", "class", facts);
}

static const CheckAsk education_asks[] = {
  { "verdict", "text", education_record },
  { NULL }
};

static double
release_log (CheckRow *row)
{
  return answer_rule (row, "privacy", check_text (row, "release"), "log_needed", NULL);
}

static const CheckAsk release_asks[] = {
  { "log_needed", "text", release_log },
  { NULL }
};

/* What no rule holds back, in the order given. */
static double
exported (CheckRow *row)
{
  g_auto(GStrv) fields = g_strsplit (check_text (row, "fields"), "|", -1);
  g_autoptr(GString) kept = g_string_new (NULL);

  for (gsize i = 0; fields[i] != NULL; i++)
    if (stead_limit_table_find (rules (), "privacy", fields[i], "exported", NULL, NULL) == NULL)
      g_string_append_printf (kept, "%s%s", kept->len > 0 ? "|" : "", fields[i]);
  return check_answer_word (row, kept->str);
}

static const CheckAsk export_asks[] = {
  { "exported", "text", exported },
  { NULL }
};

/* cash rule */

static double
cash_rule (CheckRow *row)
{
  g_autofree char *state = g_ascii_strdown (check_text (row, "jurisdiction"), -1);

  return answer_rule (row, "cash", state, check_ask_name (row), NULL);
}

static double
cash_rule_usd (CheckRow *row)
{
  return 100 * cash_rule (row);
}

static const CheckAsk cash_asks[] = {
  { "deposit_within_hours", "h", cash_rule },
  { "deposit_intact", "text", cash_rule },
  { "deposit_within_banking_days", "days", cash_rule },
  { "deposit_within_days", "days", cash_rule },
  { "board_may_allow_until_on_hand_usd", "USD", cash_rule_usd },
  { "students_sign_from_grade", "grade", cash_rule },
  { "individual_student_accounts", "text", cash_rule },
  { "tax_free_sale_days_per_year", "days", cash_rule },
  { "tax_free_sale_hours_each", "h", cash_rule },
  { "people_counting", "people", cash_rule },
  { "count_every_days", "days", cash_rule },
  { NULL }
};

/* guidance */

/* What a figure is about stands first in the table; the rest are conditions. */
static const char * const subjects[] = { "part", "record", "event", "task", "material", "cover", "animal" };
static const char * const conditions[] = {
  "animal", "housing", "climate", "weight_lb", "weight_over_kg", "milk_pt", "kids", "pen", "part", "side",
  "material", "wood", "sheet", "cover", "aim", "traffic", "task", "age_y", "supervision", "record", "event",
  "case", "book", "rule",
};
static const char * const processes[] = {
  "space", "fence", "fill", "lumber", "roof", "hoop", "permit", "dig", "age", "hours", "value", "record", "event",
  "privacy", "standards",
};

/* Number or word, as the table takes either. */
static SteadLimitFact
fact_of (CheckRow   *row,
         const char *name)
{
  const char *text = check_text (row, name);
  char *end = NULL;
  double number = g_ascii_strtod (text, &end);

  if (*text != '\0' && *end == '\0')
    return (SteadLimitFact) { name, NULL, number };
  return (SteadLimitFact) { name, text, 0 };
}

/* The conditions of the row besides the subject, with a NULL name at the end. */
static void
read_facts (CheckRow       *row,
            const char     *subject,
            SteadLimitFact *facts)
{
  gsize n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (conditions); i++)
    if (check_has (row, conditions[i]) && g_strcmp0 (conditions[i], subject) != 0)
      facts[n++] = fact_of (row, conditions[i]);
  facts[n] = (SteadLimitFact) { NULL };
}

/* Whether the rule asks for everything that the row names: a figure of one rule must not
 * stand in for that of another. */
static gboolean
uses_all (const SteadLimit     *rule,
          const SteadLimitFact *facts)
{
  g_auto(GStrv) terms = g_strsplit (rule->when, " ", -1);

  for (; facts->name != NULL; facts++)
    {
      gsize length = strlen (facts->name);
      gboolean found = FALSE;

      for (gsize i = 0; terms[i] != NULL && !found; i++)
        found = g_str_has_prefix (terms[i], facts->name) && strchr ("<>=", terms[i][length]) != NULL
                && terms[i][length] != '\0';
      if (!found)
        return FALSE;
    }
  return TRUE;
}

/* The rules that answer the row: one, or the two ends of a range. */
static GPtrArray *
find_rules (CheckRow *row)
{
  SteadLimitFact facts[G_N_ELEMENTS (conditions) + 1];
  const char *subject = NULL;
  const char *word = "any";

  for (gsize i = 0; i < G_N_ELEMENTS (subjects) && subject == NULL; i++)
    if (check_has (row, subjects[i]))
      subject = subjects[i];
  if (subject != NULL)
    word = check_text (row, subject);
  read_facts (row, subject, facts);
  for (gsize p = 0; p < G_N_ELEMENTS (processes); p++)
    {
      g_autoptr(GPtrArray) found = stead_limit_table_list (rules (), processes[p], word, check_ask_name (row), facts);

      for (guint i = found->len; i-- > 0;)
        if (!uses_all (found->pdata[i], facts))
          g_ptr_array_remove_index (found, i);
      if (found->len > 0)
        return g_steal_pointer (&found);
    }
  return NULL;
}

static double
guidance (CheckRow *row)
{
  g_autoptr(GPtrArray) found = find_rules (row);
  const SteadLimit *rule;
  const SteadLimit *other;

  if (found == NULL)
    return NAN;
  rule = found->pdata[0];
  if (rule->word != NULL)
    return check_answer_word (row, rule->word);
  if (rule->direction == STEAD_LIMIT_IS || found->len == 1)
    return rule->value;
  /* A range without a figure of the program's own: both ends must be right for its
   * middle to be. */
  other = found->pdata[1];
  return (rule->value + other->value) / 2;
}

static double
guidance_usd (CheckRow *row)
{
  return 100 * guidance (row);
}

#define FIGURE(name, unit) { name, unit, guidance }

static const CheckAsk guidance_asks[] = {
  FIGURE ("housed_area_per_head", "sqft"), FIGURE ("min_housed_area_per_head", "sqft"),
  FIGURE ("yard_area_per_head", "sqft"), FIGURE ("min_pen_width", "ft"), FIGURE ("min_pen_length", "ft"),
  FIGURE ("feeder_per_head", "in"), FIGURE ("perch_per_head", "in"), FIGURE ("hens_per_nest_box", "count"),
  FIGURE ("nest_box_in", "text"), FIGURE ("water_per_head", "gal/d"), FIGURE ("start_depth", "in"),
  FIGURE ("eave_height", "ft"), FIGURE ("min_top_wire_height", "in"), FIGURE ("fence_height", "in"),
  FIGURE ("wires", "count"), FIGURE ("bottom_wire_height", "in"), FIGURE ("mesh_opening_in", "text"),
  FIGURE ("max_post_spacing", "ft"), FIGURE ("post_spacing", "ft"), FIGURE ("min_post_length", "ft"),
  FIGURE ("post_length", "ft"), FIGURE ("min_post_depth", "ft"), FIGURE ("post_depth", "ft"),
  FIGURE ("post_diameter", "in"), FIGURE ("min_share_in_ground", "pct"), FIGURE ("max_brace_interval", "ft"),
  FIGURE ("min_staple_length", "in"), FIGURE ("panel_length", "ft"), FIGURE ("panel_heights_in", "text"),
  FIGURE ("rod_length", "ft"), FIGURE ("rod_spacing", "ft"), FIGURE ("gate_width", "ft"),
  FIGURE ("gate_shorter_than_opening", "in"), FIGURE ("roll_length", "ft"), FIGURE ("apron_width", "in"),
  FIGURE ("waste_pct", "pct"), FIGURE ("eave_overhang", "in"), FIGURE ("end_overhang", "in"),
  FIGURE ("min_end_lap", "in"), FIGURE ("cover_width", "in"), FIGURE ("ton_per_cuyd", "ton/cuyd"),
  FIGURE ("u_value", "Btu/h/sqft/F"), FIGURE ("heat_saving", "pct"),
  FIGURE ("max_shed_area_without_permit", "sqft"), FIGURE ("max_fence_height_without_permit", "ft"),
  FIGURE ("max_area_excused_from_frost_depth", "sqft"), FIGURE ("max_eave_excused_from_frost_depth", "ft"),
  FIGURE ("notice_business_days", "d"), FIGURE ("no_machine_zone", "in"), FIGURE ("exemption_needs", "text"),
  FIGURE ("supervision_checks", "text"), FIGURE ("min_age", "y"), FIGURE ("max_spell", "min"),
  FIGURE ("not_covered", "text"), FIGURE ("rest_that_counts", "min"), FIGURE ("meal_that_does_not_count", "min"),
  FIGURE ("min_meal_period", "min"), FIGURE ("rounding_units", "text"), FIGURE ("min_work_based_hours", "h"),
  FIGURE ("added_to_hourly_earnings", "pct"), FIGURE ("volunteer_value_basis", "text"),
  { "minimum_wage", "USD/h", guidance_usd },
  FIGURE ("first_page", "page"), FIGURE ("last_page", "page"), FIGURE ("marks_of_a_good_record", "text"),
  FIGURE ("must_keep", "text"), FIGURE ("proof_kinds", "text"), FIGURE ("min_keep", "y"),
  FIGURE ("statements", "text"), FIGURE ("event_parts", "text"), FIGURE ("scored_parts", "text"),
  FIGURE ("log_fields", "text"), FIGURE ("max_access_days", "d"), FIGURE ("rights_pass_at_age", "y"),
  FIGURE ("under_age", "y"), FIGURE ("personal_information", "text"), FIGURE ("state", "text"),
  FIGURE ("kinds", "text"), FIGURE ("must_be", "text"),
  { NULL }
};

const CheckTopic check_rules_topics[] = {
  { "tool age flag", "work task age_y height_ft power_hp exemption_on_file", tool_asks },
  { "farm work by age", "age_y", farm_asks },
  { "volunteer hour rate", "year", rate_asks },
  { "standards count", "edition prefix", standards_asks },
  { "standards code pattern", "code", code_asks },
  { "event points", "part_points members member_points", event_asks },
  { "record rule", "action", record_asks },
  { "privacy field", "field", field_asks },
  { "education record", "about_student kept_by_school", education_asks },
  { "release log", "release", release_asks },
  { "export default", "fields", export_asks },
  { "cash rule", "jurisdiction", cash_asks },
  { "guidance",
    "animal housing climate weight_lb weight_over_kg milk_pt kids pen part side material wood sheet cover aim "
    "traffic task age_y supervision record event case book rule", guidance_asks },
  { NULL }
};
