/* stead-statement-why.c - the totals of the statements, worked with the farm's numbers. */
#include "config.h"

#include "answer/stead-statement-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

/* The lines of @part that are summed up; totals and what stands apart are not. */
static void
add_lines (const SteadStatementAnswer *self,
           SteadStatementPart          part,
           GString                    *sum)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadStatementLine *line = self->lines->pdata[i];

      if (line->part == part && !line->is_total && !line->is_apart && line->cents != 0)
        stead_sum_add (sum, line->cents, self->farm->currency);
    }
}

static SteadWhy *
cash_why (const SteadStatementAnswer *self)
{
  const gint64 parts[] = { self->cash_before, self->operating, self->investing, self->financing };
  GString *sum = g_string_new (NULL);
  gint64 moved = self->cash_end;   /* on its way from one account to another */

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      stead_sum_add (sum, parts[i], self->farm->currency);
      moved -= parts[i];
    }
  if (moved != 0)
    stead_sum_add (sum, moved, self->farm->currency);
  stead_sum_total (sum, self->cash_end, self->farm->currency);
  return stead_why_new (g_strdup (_("Money at the end")),
                        _("Money at first + from running the farm + from things that last + from money put in and taken out. What went "
                          "out counts below zero."),
                        g_string_free (sum, FALSE), _("OpenStax Principles of Accounting, volume 1, section 16.3."));
}

SteadWhy *
stead_statement_net_why (const SteadStatementAnswer *self)
{
  GString *sum = g_string_new (NULL);

  g_return_val_if_fail (self != NULL, NULL);
  add_lines (self, STEAD_STATEMENT_INCOME, sum);
  if (sum->len == 0)
    stead_sum_add (sum, 0, self->farm->currency);
  stead_sum_total (sum, self->net, self->farm->currency);
  return stead_why_new (g_strdup (_("Earned")),
                        _("Sales and other income − the cost of what was sold, other costs, wear and losses: the lines of the "
                          "income statement in Keep, in their order"),
                        g_string_free (sum, FALSE), _("OpenStax Principles of Accounting, volume 1, section 2.1."));
}

static SteadWhy *
balance_why (const SteadStatementAnswer *self)
{
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, self->owned_end, self->farm->currency);
  stead_sum_add (sum, -self->owed_end, self->farm->currency);
  stead_sum_total (sum, self->worth_end, self->farm->currency);
  return stead_why_new (g_strdup (_("What the farm is worth")), _("What is owned − what is owed, at the end of the time."),
                        g_string_free (sum, FALSE), _("OpenStax Principles of Accounting, volume 1, section 2.1."));
}

/* For one enterprise only its goods are known apart. */
SteadWhy *
stead_statement_worth_why (const SteadStatementAnswer *self)
{
  GString *sum = g_string_new (NULL);
  const char *currency;
  gboolean whole;

  g_return_val_if_fail (self != NULL, NULL);
  currency = self->farm->currency;
  whole = self->enterprise_id == 0;
  stead_sum_add (sum, self->worth_end, currency);
  stead_sum_add (sum, -self->worth_before, currency);
  stead_sum_total (sum, self->worth_end - self->worth_before, currency);
  if (whole)
    {
      g_autoptr(GString) parts = g_string_new (NULL);

      stead_sum_add (parts, self->net, currency);
      stead_sum_add (parts, self->put_in, currency);
      stead_sum_add (parts, -self->taken_out, currency);
      stead_sum_total (parts, self->net + self->put_in - self->taken_out, currency);
      g_string_append_printf (sum, "\n%s", parts->str);
    }
  return stead_why_new (g_strdup (_("Change of what the farm is worth")),
                        whole ? _("Worth at the end − worth at first, each what is owned − what is owed. The same: earned + money and "
                                  "gifts put in − taken out for the group.")
                              : _("Worth of this part’s goods at the end − at first. Money and things that last belong to the whole "
                                  "farm."),
                        g_string_free (sum, FALSE), _("OpenStax Principles of Accounting, volume 1, section 2.1."));
}

GPtrArray *
stead_statement_answer_whys (const SteadStatementAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->enterprise_id == 0)
    g_ptr_array_add (whys, cash_why (self));
  g_ptr_array_add (whys, stead_statement_net_why (self));
  if (self->enterprise_id == 0)
    g_ptr_array_add (whys, balance_why (self));
  g_ptr_array_add (whys, stead_statement_worth_why (self));
  return whys;
}
