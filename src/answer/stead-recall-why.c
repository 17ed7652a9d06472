/* stead-recall-why.c - how much of a lot is accounted for, worked out. */
#include "config.h"

#include "answer/stead-check-answer.h"
#include "answer/stead-recall-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
add_amount (GString         *sum,
            double           base,
            const SteadUnit *unit)
{
  g_autofree char *text = base > 1e-6 ? stead_quantity_format (base, unit) : NULL;

  if (text != NULL)
    stead_sum_add_term (sum, text);
}

/* "Tomato sauce, K26062-1: (3 jars + 21 jars) ÷ 24 jars = 100 %". */
static void
add_row (GString              *worked,
         const SteadRecallRow *row)
{
  const SteadTraceLot *lot = row->lot;
  g_autoptr(GString) known = g_string_new (NULL), in = g_string_new (NULL);
  g_autofree char *share = stead_recall_share_text (row->known_frac);

  add_amount (known, lot->used_base, lot->unit);
  add_amount (known, lot->sold_base, lot->unit);
  add_amount (known, lot->given_base, lot->unit);
  add_amount (known, lot->lost_base, lot->unit);
  add_amount (known, lot->left_base, lot->unit);
  add_amount (in, lot->in_base, lot->unit);
  add_amount (in, lot->found_base, lot->unit);
  if (in->len == 0)
    return;
  /* Translators: a thing and its lot, what is known of it, what came in, a percentage. */
  g_string_append_printf (worked, _("%1$s%2$s: (%3$s) ÷ (%4$s) = %5$s"), worked->len > 0 ? "\n" : "", row->name,
                          known->len > 0 ? known->str : "0", in->str, share);
}

/* Rounded down, so that only all of it is 100 %. */
char *
stead_recall_share_text (double frac)
{
  return stead_words_percent (floor (frac * 1000 + 1e-9) / 1000, frac < 1 ? 1 : 0);
}

GPtrArray *
stead_recall_answer_whys (const SteadRecallAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();
  GString *worked = g_string_new (NULL);

  g_return_val_if_fail (self != NULL, whys);
  for (guint i = 0; i < self->rows->len; i++)
    add_row (worked, self->rows->pdata[i]);
  if (worked->len == 0)
    {
      g_string_free (worked, TRUE);
      return whys;
    }
  if (self->rows->len > 1)
    /* Translators: a percentage. */
    g_string_append_printf (worked, _("\nThe least of them: %s"), self->share);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("How much is accounted for")),
    _("(Used + sold + given away + lost + still there) ÷ (what came in + what a count found more). Of several lots the least share "
      "counts. What a count missed is not accounted for. It is rounded down, so that only all of it is 100%."),
    g_string_free (worked, FALSE), _("Mass balance of a traceability exercise: common practice, no source.")));
  return whys;
}

/* --- drills that were kept --------------------------------------------------------------------- */

/* Whole minutes, as they are told. */
double
stead_drill_minutes (const SteadDrill *drill)
{
  g_return_val_if_fail (drill != NULL, NAN);
  return drill->ended_at == STEAD_TIME_NONE ? NAN : round ((double) (drill->ended_at - drill->started_at) / 60);
}

/* "Mar 3, 2026, K26062-1: 10:05 to 10:47 = 42 min; 98.5 % when the clock stopped" */
static void
add_drill (GString          *worked,
           const SteadDrill *drill)
{
  g_autofree char *day = stead_day_format (stead_time_day (drill->started_at), STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *start = stead_check_time_text (drill->started_at), *end = stead_check_time_text (drill->ended_at);
  g_autofree char *minutes = stead_number_format (stead_drill_minutes (drill), 0);
  g_autofree char *known = isnan (drill->known_frac) ? NULL : stead_recall_share_text (drill->known_frac);

  if (worked->len > 0)
    g_string_append_c (worked, '\n');
  /* Translators: a day, a lot, two times of the day, minutes. */
  g_string_append_printf (worked, _("%1$s, %2$s: from %3$s to %4$s = %5$s min"), day, drill->lot_code, start, end, minutes);
  if (known != NULL)
    /* Translators: goes on after minutes; a percentage. */
    g_string_append_printf (worked, _("; %s when the clock stopped"), known);
}

GPtrArray *
stead_drills_whys (const GPtrArray *drills)
{
  GPtrArray *whys = stead_whys_new ();
  GString *worked = g_string_new (NULL);

  g_return_val_if_fail (drills != NULL, whys);
  for (guint i = 0; i < drills->len; i++)
    if (((const SteadDrill *) drills->pdata[i])->ended_at != STEAD_TIME_NONE)
      add_drill (worked, drills->pdata[i]);
  if (worked->len == 0)
    {
      g_string_free (worked, TRUE);
      return whys;
    }
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("How long each drill took, and what it found")),
    _("Time at which the clock was stopped − time at which it was started. The share is kept as the sheet showed it when the clock "
      "stopped: (used + sold + given away + lost + still there) ÷ what came in, of several lots the least. What was entered later "
      "does not change it."),
    g_string_free (worked, FALSE), _("Mass balance of a traceability exercise: common practice, no source.")));
  return whys;
}
