/* stead-trace-why.c - what is left of each lot of a trace, worked out. */
#include "config.h"

#include "answer/stead-trace-answer.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

static void
add_term (GString    *sum,
          const char *sign,
          const char *amount)
{
  if (amount != NULL)
    g_string_append_printf (sum, sum->len > 0 ? " %s %s" : "%s%s", sum->len > 0 ? sign : "", amount);
}

/* "24 − 3 − 21 = 0"; what a count missed is told as it stands: "+ −1". */
static void
add_row (GString             *worked,
         const SteadTraceRow *row)
{
  g_autoptr(GString) sum = g_string_new (NULL);
  g_autofree char *left = stead_quantity_format (row->lot->left_base, row->lot->unit);

  add_term (sum, "+", row->in);
  add_term (sum, "+", row->found);
  if (sum->len == 0)
    return;
  add_term (sum, "−", row->used);
  add_term (sum, "−", row->sold);
  add_term (sum, "−", row->given);
  add_term (sum, "−", row->lost);
  /* Translators: a thing and its lot, a calculation, its result; the first is a line break or nothing. */
  g_string_append_printf (worked, row->balances ? _("%1$s%2$s: %3$s = %4$s")
                                                : _("%1$s%2$s: %3$s, but there are %4$s: it does not balance."),
                          worked->len > 0 ? "\n" : "", row->name, sum->str, left);
}

GPtrArray *
stead_trace_answer_whys (const SteadTraceAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();
  GString *worked = g_string_new (NULL);

  g_return_val_if_fail (self != NULL, whys);
  for (guint i = 0; i < self->ahead->len; i++)
    add_row (worked, self->ahead->pdata[i]);
  for (guint i = 0; i < self->back->len; i++)
    add_row (worked, self->back->pdata[i]);
  if (worked->len > 0)
    g_ptr_array_add (whys, stead_why_new (
      g_strdup (_("What is left of each lot")),
      _("What came in + what a count found − used − sold − given away − lost."),
      g_string_free (worked, FALSE), _("Mass balance of a traceability exercise: common practice, no source.")));
  else
    g_string_free (worked, TRUE);
  return whys;
}
