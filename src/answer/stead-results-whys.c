/* stead-results-whys.c - how the results of an enterprise, and each one's share, come about. */
#include "config.h"

#include "answer/stead-results-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadResultsAnswer *self,
       gint64                    cents)
{
  return stead_money_format (cents, self->farm->currency);
}

static SteadWhy *
hour_why (const SteadResultsAnswer *self)
{
  g_autofree char *net = money (self, self->net_cents);
  g_autofree char *hours = stead_number_format ((double) self->unpaid_min / 60, 2);
  g_autofree char *one = money (self, stead_money_round (self->per_hour_cents));

  return stead_why_new (g_strdup (_("Earned for an hour that was not paid")),
                        _("Earned ÷ hours that nobody was paid for. Paid hours are among the costs already."),
                        /* Translators: money, hours, money for an hour. */
                        g_strdup_printf (_("%1$s ÷ %2$s h = %3$s"), net, hours, one),
                        _("A jam seller's published arithmetic, 2011: what is left after cash costs ÷ hours of one's own."));
}

static const char *
share_formula (SteadShareBasis basis)
{
  switch (basis)
    {
    case STEAD_SHARE_ROLE:
      return _("Earned × parts of one’s role ÷ parts of all. Whole cents; the cents that are left over go to the largest "
               "remainders, so all shares sum to what was earned.");
    case STEAD_SHARE_FIXED:
      return _("Earned × one’s parts ÷ parts of all. Whole cents; the cents that are left over go to the largest remainders, so "
               "all shares sum to what was earned.");
    case STEAD_SHARE_HOURS:
    default:
      return _("Earned × one’s hours ÷ hours of all, each times the factor that was agreed. Whole cents; the cents that are left "
               "over go to the largest remainders, so all shares sum to what was earned.");
    }
}

/* Worked for everybody. */
static SteadWhy *
shares_why (const SteadResultsAnswer *self)
{
  gboolean by_hours = self->rule->basis == STEAD_SHARE_HOURS;
  g_autofree char *net = money (self, self->net_cents), *all = NULL;
  GString *worked = g_string_new (NULL);
  double sum = 0;

  for (guint i = 0; i < self->shares->len; i++)
    sum += ((const SteadResultShare *) self->shares->pdata[i])->weight;
  all = stead_number_format (by_hours ? sum / 60 : sum, 2);
  for (guint i = 0; i < self->shares->len; i++)
    {
      const SteadResultShare *share = self->shares->pdata[i];
      g_autofree char *weight = stead_number_format (by_hours ? share->weight / 60 : share->weight, 2);
      g_autofree char *cents = money (self, share->cents);

      /* Translators: a person; money × hours or parts ÷ those of all = money. */
      g_string_append_printf (worked, _("%1$s: %2$s × %3$s ÷ %4$s = %5$s"), share->name, net, weight, all, cents);
      if (i + 1 < self->shares->len)
        g_string_append_c (worked, '\n');
    }
  return stead_why_new (g_strdup (_("Each one's share")), share_formula (self->rule->basis), g_string_free (worked, FALSE),
                        _("Largest remainders: OpenStax Contemporary Mathematics, section 11.4."));
}

void
stead_results_put_whys (SteadResultsAnswer         *self,
                        const SteadStatementAnswer *statement)
{
  g_ptr_array_add (self->whys, stead_statement_net_why (statement));
  g_ptr_array_add (self->whys, stead_statement_worth_why (statement));
  if (!isnan (self->per_hour_cents))
    g_ptr_array_add (self->whys, hour_why (self));
  if (self->shares->len > 0)
    g_ptr_array_add (self->whys, shares_why (self));
}
