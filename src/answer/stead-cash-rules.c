/* stead-cash-rules.c - rows of the table of cash rules, as sentences. */
#include "config.h"

#include "answer/stead-cash-rules.h"
#include "answer/stead-rules.h"

#include <glib/gi18n-lib.h>

void
stead_cash_rule_free (SteadCashRule *self)
{
  if (self == NULL)
    return;
  g_free (self->text);
  g_free (self);
}

static const char *
place_name (const char *subject)
{
  static const struct { const char *subject, *name; } places[] = {
    { "washington", N_("Washington") }, { "utah", N_("Utah") }, { "north_carolina", N_("North Carolina") },
    { "kentucky", N_("Kentucky") }, { "texas", N_("Texas") }, { "general_practice", N_("Common practice") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    if (g_str_equal (subject, places[i].subject))
      return _(places[i].name);
  g_return_val_if_reached (subject);
}

/* Translators: each of these begins with a state of the United States, or “Common practice”. */
static char *
sentence (const SteadLimit *rule)
{
  const char *place = place_name (rule->subject);
  const char *asks = rule->measure;
  int figure = (int) rule->value;

  if (g_str_equal (asks, "deposit_within_hours"))
    return g_strdup_printf (_("%s: deposit within %d hours."), place, figure);
  if (g_str_equal (asks, "deposit_intact"))
    return g_strdup_printf (_("%s: deposit all that was taken in; pay nothing and change nothing out of it."), place);
  if (g_str_equal (asks, "deposit_within_banking_days"))
    return g_strdup_printf (_("%s: deposit every day if you can, and within %d banking days at the latest."), place,
                            figure);
  if (g_str_equal (asks, "deposit_within_days"))
    return g_strdup_printf (_("%s: deposit every day."), place);
  if (g_str_equal (asks, "board_may_allow_until_on_hand_usd"))
    return g_strdup_printf (_("%s: the school board may let money wait until $%d is on hand."), place, figure);
  if (g_str_equal (asks, "students_sign_from_grade"))
    return g_strdup_printf (_("%s: students sign the collection form from grade %d on."), place, figure);
  if (g_str_equal (asks, "individual_student_accounts"))
    return g_strdup_printf (_("%s: what is earned belongs to the whole group, not to single students."), place);
  if (g_str_equal (asks, "tax_free_sale_days_per_year"))
    return g_strdup_printf (_("%s: %d sales a year may be free of sales tax."), place, figure);
  if (g_str_equal (asks, "tax_free_sale_hours_each"))
    return g_strdup_printf (_("%s: a sale that is free of sales tax lasts %d hours at most."), place, figure);
  if (g_str_equal (asks, "people_counting"))
    return g_strdup_printf (_("%s: at least %d people count together."), place, figure);
  if (g_str_equal (asks, "count_every_days"))
    return g_strdup_printf (_("%s: count on every day of sales."), place);
  g_return_val_if_reached (NULL);
}

GPtrArray *
stead_cash_rules_list (void)
{
  const SteadLimitTable *table = stead_rules_get ();
  GPtrArray *rules = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_cash_rule_free);

  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *row = stead_limit_table_get_row (table, i);
      SteadCashRule *rule;

      if (!g_str_equal (row->process, "cash"))
        continue;
      rule = g_new0 (SteadCashRule, 1);
      rule->text = sentence (row);
      rule->source = row->source;
      g_ptr_array_add (rules, rule);
    }
  return rules;
}
