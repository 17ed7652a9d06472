/* stead-demo-build.c - the pen that the demo farm raises money for: priced, partly paid,
 * begun.
 *
 * The keys of things ("line_post") are those of answer/stead-build-takeoff.h.
 */
#include "config.h"

#include <math.h>

#include "core/stead-us-units.h"
#include "store/stead-build-buy-repo.h"
#include "store/stead-build-money-repo.h"
#include "store/stead-demo-writer-private.h"

#define FT STEAD_FOOT_M

/* What is being written. */
typedef struct
{
  SteadDemoWriter *writer;
  const char      *group;
  SteadBuild      *build;
  GError         **error;
} Plan;

/* One part of a list, "line_post:8.50:12", in @n words: what is done with it. */
typedef gboolean (*Entry) (Plan *plan, char **words);

static double
number (Plan       *plan,
        const char *text)
{
  return stead_demo_number_of (&plan->writer->story->reader, text);
}

static gint64
cents (Plan       *plan,
       const char *text)
{
  return stead_demo_cents_of (&plan->writer->story->reader, text);
}

/* So many days before today; below 0: after it. */
static SteadDay
days_ago (Plan       *plan,
          const char *text)
{
  return plan->writer->story->today - (int) number (plan, text);
}

/* Runs @entry for each part of the list @key. */
static gboolean
each (Plan       *plan,
      const char *key,
      guint       n,
      Entry       entry)
{
  SteadDemoReader *reader = &plan->writer->story->reader;
  g_auto(GStrv) list = stead_demo_list (reader, plan->group, key);

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) words = g_strsplit (*text, ":", -1);

      if (g_strv_length (words) != n)
        {
          stead_demo_fault (reader, plan->group, key);
          return stead_demo_sound (plan->writer, plan->error);
        }
      for (guint i = 0; i < n; i++)
        g_strstrip (words[i]);
      if (!entry (plan, words))
        return FALSE;
    }
  return stead_demo_sound (plan->writer, plan->error);
}

/* --- the drawing ------------------------------------------------------------------------ */

static void
draw (Plan *plan)
{
  SteadDemoReader *reader = &plan->writer->story->reader;
  SteadBuild *build = plan->build;
  double length = FT * stead_demo_number (reader, plan->group, "length_ft");
  double width = FT * stead_demo_number (reader, plan->group, "width_ft");
  double gate = FT * stead_demo_number (reader, plan->group, "gate_ft");
  double wall = FT * stead_demo_number (reader, plan->group, "shelter_ft");
  double depth = FT * stead_demo_number (reader, plan->group, "shelter_deep_ft");
  SteadFenceGate opening = { 1, (width - gate) / 2, gate };

  stead_build_set_rectangle (build, length, width);
  g_array_append_val (build->gates, opening);
  g_array_index (build->corners, SteadBuildCorner, 0).rise_m = FT * stead_demo_number (reader, plan->group, "rise_ft");
  build->has_shelter = TRUE;
  build->shelter = (SteadBuildShelter) { .x_m = 2 * FT, .y_m = 2 * FT, .wall_m = wall, .depth_m = depth, .front_m = 7 * FT,
                                         .rear_m = 5 * FT, .overhang_front_m = FT, .overhang_rear_m = FT / 2,
                                         .end_m = FT / 2, .cover_m = 2.75 * FT, .rafter_spacing_m = 2 * FT,
                                         .post_spacing_m = 8 * FT, .post_depth_m = 3.5 * FT };
}

static gboolean
write_head (Plan *plan)
{
  SteadDemoWriter *writer = plan->writer;
  SteadDemoReader *reader = &writer->story->reader;
  SteadBuild *build = plan->build;
  g_autofree char *fund = stead_demo_text (reader, plan->group, "fund");

  build->name = g_strdup (stead_demo_group_name (plan->group));
  build->animal = stead_demo_text (reader, plan->group, "animal");
  build->head = (int) stead_demo_number (reader, plan->group, "head");
  build->begun_on = writer->story->today - (int) stead_demo_number (reader, plan->group, "begun_days");
  build->goal_on = writer->story->today + (int) stead_demo_number (reader, plan->group, "goal_days");
  build->dig_on = writer->story->today + (int) stead_demo_number (reader, plan->group, "dig_days");
  build->tax_frac = stead_demo_number (reader, plan->group, "tax");
  build->sale_frac = stead_demo_number (reader, plan->group, "sale_share");
  build->fund_id = stead_demo_id_of (writer, "fund", fund);
  draw (plan);
  return stead_demo_sound (writer, plan->error) && stead_build_repo_save (writer->store, build, plan->error);
}

/* --- the bill --------------------------------------------------------------------------- */

/* "line_post:8.50" */
static gboolean
add_price (Plan  *plan,
           char **words)
{
  g_autoptr(SteadBuildLine) line = stead_build_line_new ();

  line->build_id = plan->build->id;
  line->key = g_strdup (words[0]);
  line->price_cents = cents (plan, words[1]);
  return stead_build_line_repo_save (plan->writer->store, line, plan->error);
}

static SteadBuildLine *
find_line (Plan       *plan,
           const char *key)
{
  g_autoptr(GPtrArray) lines = stead_build_line_repo_list (plan->writer->store, plan->build->id, plan->error);

  if (lines == NULL)
    return NULL;
  for (guint i = 0; i < lines->len; i++)
    if (g_strcmp0 (((SteadBuildLine *) lines->pdata[i])->key, key) == 0)
      return g_ptr_array_steal_index (lines, i);
  stead_demo_fault (&plan->writer->story->reader, plan->group, "prices");
  g_return_val_if_fail (!stead_demo_sound (plan->writer, plan->error), NULL);
  return NULL;
}

/* "roof_panel:Ember Lake Lumber:34.00:9": days ago; the first of a thing is the one that is chosen. */
static gboolean
add_quote (Plan  *plan,
           char **words)
{
  g_autoptr(SteadBuildLine) line = find_line (plan, words[0]);
  SteadBuildQuote quote = { .supplier = words[1], .price_cents = cents (plan, words[2]), .day = days_ago (plan, words[3]) };

  if (line == NULL || !stead_build_quote_repo_add (plan->writer->store, line->id, &quote, plan->error))
    return FALSE;
  if (line->supplier != NULL)
    return TRUE;
  line->supplier = g_strdup (words[1]);
  line->price_cents = quote.price_cents;
  return stead_build_line_repo_save (plan->writer->store, line, plan->error);
}

/* "staple:500" */
static gboolean
add_pack (Plan  *plan,
          char **words)
{
  g_autoptr(SteadBuildLine) line = find_line (plan, words[0]);

  if (line == NULL)
    return FALSE;
  line->pack = number (plan, words[1]);
  return stead_build_line_repo_save (plan->writer->store, line, plan->error);
}

/* "animal:The Bellweather family" */
static gboolean
add_gift (Plan  *plan,
          char **words)
{
  g_autoptr(SteadBuildLine) line = find_line (plan, words[0]);

  if (line == NULL)
    return FALSE;
  line->given = TRUE;
  line->giver = g_strdup (words[1]);
  return stead_build_line_repo_save (plan->writer->store, line, plan->error);
}

/* --- money ------------------------------------------------------------------------------ */

/* "A family:75.00:0.9:-20:12": how likely, days ago that it was due; days ago that it came, or "no". */
static gboolean
add_pledge (Plan  *plan,
            char **words)
{
  SteadStore *store = plan->writer->store;
  g_autoptr(SteadBuildPledge) pledge = stead_build_pledge_new ();
  g_autoptr(SteadCashLine) cash = stead_cash_line_new ();

  pledge->build_id = plan->build->id;
  pledge->who = g_strdup (words[0]);
  pledge->cents = cents (plan, words[1]);
  pledge->chance = number (plan, words[2]);
  pledge->pledged_on = plan->build->begun_on + 7;
  pledge->due_on = days_ago (plan, words[3]);
  if (!stead_build_pledge_repo_save (store, pledge, 0, plan->error))
    return FALSE;
  if (g_str_equal (words[4], "no"))
    return TRUE;
  cash->day = days_ago (plan, words[4]);
  cash->account_id = stead_demo_cash_office (plan->writer);
  cash->fund_id = plan->build->fund_id;
  cash->cents = pledge->cents;
  cash->person_id = plan->writer->advisor_id;
  return stead_build_pledge_repo_receive (store, pledge, cash, plan->error);
}

/* "Grant for shelters:shelter:-120": the part, and days ago that it has to be spent by. */
static gboolean
add_grant (Plan  *plan,
           char **words)
{
  static const char * const parts[] = { "fence", "gate", "shelter", "ground", "cover", "animals", "other" };
  SteadBuildGrant grant = { stead_demo_id_of (plan->writer, "fund", words[0]), STEAD_BUILD_PART_ANY, days_ago (plan, words[2]) };

  for (int i = 0; i < STEAD_N_BUILD_PARTS; i++)
    if (g_str_equal (words[1], parts[i]))
      grant.part = i;
  return stead_demo_sound (plan->writer, plan->error) &&
         stead_build_grant_repo_set (plan->writer->store, plan->build->id, &grant, 1, plan->error);
}

/* "Spring market:-30:14:6:85.00:30.00": first day, days between, times, mean, give or take. */
static gboolean
add_income (Plan  *plan,
            char **words)
{
  g_autoptr(SteadBuildIncome) income = stead_build_income_new ();

  income->build_id = plan->build->id;
  income->name = g_strdup (words[0]);
  income->first_on = days_ago (plan, words[1]);
  income->every_days = (int) number (plan, words[2]);
  income->times = (int) number (plan, words[3]);
  income->mean_cents = cents (plan, words[4]);
  income->sd_cents = cents (plan, words[5]);
  income->is_sale = TRUE;
  return stead_build_income_repo_save (plan->writer->store, income, plan->error);
}

/* "Ember Lake Lumber:12:5012:6.96:corner_post=4=56.00,gate_post=2=28.00": days ago, number
 * of the receipt, tax, and how many of each for how much. */
static gboolean
add_receipt (Plan  *plan,
             char **words)
{
  g_auto(GStrv) things = g_strsplit (words[4], ",", -1);
  g_autoptr(GArray) buys = g_array_new (FALSE, TRUE, sizeof (SteadBuildBuy));
  SteadBuildPurchase purchase = { days_ago (plan, words[1]), stead_demo_cash_office (plan->writer), plan->build->fund_id,
                                  words[0], words[2], cents (plan, words[3]), plan->writer->advisor_id };

  for (char **thing = things; *thing != NULL; thing++)
    {
      g_auto(GStrv) parts = g_strsplit (*thing, "=", 3);
      g_autoptr(SteadBuildLine) line = NULL;
      SteadBuildBuy buy = { 0 };

      if (g_strv_length (parts) != 3)
        {
          stead_demo_fault (&plan->writer->story->reader, plan->group, "receipts");
          return stead_demo_sound (plan->writer, plan->error);
        }
      line = find_line (plan, g_strstrip (parts[0]));
      if (line == NULL)
        return FALSE;
      buy.line_id = line->id;
      buy.packs = number (plan, parts[1]);
      buy.cents = cents (plan, parts[2]);
      g_array_append_val (buys, buy);
    }
  return stead_build_buy_repo_add (plan->writer->store, plan->build->id, &purchase, (SteadBuildBuy *) (gpointer) buys->data,
                                   buys->len, plan->error);
}

/* --- work, and afterwards --------------------------------------------------------------- */

/* "Set corner posts:12:-22:-24:hand_post_hole_digger:15:no": hours, first and last day, task,
 * age of the youngest, days ago that it was done. */
static gboolean
add_phase (Plan  *plan,
           char **words)
{
  g_autoptr(SteadBuildPhase) phase = stead_build_phase_new ();
  g_autofree char *key = NULL;

  phase->build_id = plan->build->id;
  phase->name = g_strdup (words[0]);
  phase->hours = number (plan, words[1]);
  phase->from_day = days_ago (plan, words[2]);
  phase->to_day = days_ago (plan, words[3]);
  phase->task = g_str_equal (words[4], "none") ? NULL : g_strdup (words[4]);
  phase->age_years = (int) number (plan, words[5]);
  if (!g_str_equal (words[6], "no"))
    phase->done_on = days_ago (plan, words[6]);
  if (!stead_build_phase_repo_save (plan->writer->store, phase, plan->error))
    return FALSE;
  key = g_strconcat ("phase ", words[0], NULL);
  stead_demo_set_id (plan->writer, key, phase->id);
  return TRUE;
}

/* "Hay:10:bales:7.50:each": so many a year, for each animal or for "all". */
static gboolean
add_upkeep (Plan  *plan,
            char **words)
{
  g_autoptr(SteadBuildUpkeep) upkeep = stead_build_upkeep_new ();

  upkeep->build_id = plan->build->id;
  upkeep->name = g_strdup (words[0]);
  upkeep->quantity = number (plan, words[1]);
  upkeep->unit = g_strdup (words[2]);
  upkeep->price_cents = cents (plan, words[3]);
  upkeep->per_head = g_str_equal (words[4], "each");
  return stead_build_upkeep_repo_save (plan->writer->store, upkeep, plan->error);
}

/* --- the whole -------------------------------------------------------------------------- */

static gboolean
write_build (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  g_autoptr(SteadBuild) build = stead_build_new (STEAD_BUILD_PEN);
  Plan plan = { writer, what, build, error };

  return write_head (&plan) && each (&plan, "prices", 2, add_price) && each (&plan, "packs", 2, add_pack) &&
         each (&plan, "quotes", 4, add_quote) && each (&plan, "gifts", 2, add_gift) && each (&plan, "grants", 3, add_grant) &&
         each (&plan, "pledges", 5, add_pledge) && each (&plan, "incomes", 6, add_income) &&
         each (&plan, "receipts", 5, add_receipt) && each (&plan, "work", 7, add_phase) &&
         each (&plan, "upkeep", 5, add_upkeep);
}

gboolean
stead_demo_plan_builds (SteadDemoWriter  *writer,
                        GError          **error)
{
  return stead_demo_write_groups (writer, "build", write_build, error);
}
