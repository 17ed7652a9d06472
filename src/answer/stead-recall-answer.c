/* stead-recall-answer.c - "If this lot were bad: what is touched, who must be called, and where is all of it?" */
#include "config.h"

#include "answer/stead-recall-answer.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
row_free (gpointer data)
{
  SteadRecallRow *row = data;

  g_free (row->name);
  g_free (row->left);
  g_free (row->out);
  g_free (row->gone);
  g_free (row);
}

static void
call_free (gpointer data)
{
  SteadRecallCall *call = data;

  g_free (call->who);
  g_ptr_array_unref (call->whys);
  g_free (call);
}

void
stead_recall_answer_free (SteadRecallAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->calls, g_ptr_array_unref);
  g_clear_pointer (&self->trace, stead_trace_answer_free);
  g_clear_pointer (&self->drill, stead_drill_free);
  g_free (self->share);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* --- what is touched ------------------------------------------------------------------ */

static char *
amount (double           base,
        const SteadUnit *unit)
{
  return base > 1e-6 ? stead_quantity_format (base, unit) : NULL;
}

/* What a count missed is not accounted for: nobody knows where it went. */
static double
known_frac (const SteadTraceLot *lot)
{
  double in = lot->in_base + MAX (lot->found_base, 0);
  double known = lot->used_base + lot->sold_base + lot->given_base + lot->lost_base + lot->left_base;

  return in > 1e-9 ? CLAMP (known / in, 0, 1) : 1;
}

static char *
left_text (const SteadTraceLot *lot)
{
  g_autofree char *left = amount (lot->left_base, lot->unit);

  if (left == NULL || lot->place_name == NULL)
    return g_steal_pointer (&left);
  /* Translators: an amount, a place: "3 jars: Cold room". */
  return g_strdup_printf (C_("what is left of a lot", "%1$s: %2$s"), left, lot->place_name);
}

static gboolean
add_row (SteadRecallAnswer  *self,
         SteadStore         *store,
         const SteadTraceRow *traced,
         GError            **error)
{
  const SteadTraceLot *lot = traced->lot;
  int held = stead_hold_repo_is_held (store, lot->id, error);
  SteadRecallRow *row;

  if (held < 0)
    return FALSE;
  row = g_new0 (SteadRecallRow, 1);
  row->lot = lot;
  row->name = g_strdup (traced->name);
  row->left = left_text (lot);
  row->out = amount (lot->sold_base + lot->given_base, lot->unit);
  row->gone = amount (lot->lost_base, lot->unit);
  row->known_frac = known_frac (lot);
  row->is_held = held == 1;
  self->known_frac = MIN (self->known_frac, row->known_frac);
  g_ptr_array_add (self->rows, row);
  return TRUE;
}

/* --- who to call ------------------------------------------------------------------------ */

static SteadRecallCall *
call_to (SteadRecallAnswer *self,
         const char        *who)
{
  SteadRecallCall *call;

  for (guint i = 0; i < self->calls->len; i++)
    if (g_str_equal (((const SteadRecallCall *) self->calls->pdata[i])->who, who))
      return self->calls->pdata[i];
  call = g_new0 (SteadRecallCall, 1);
  call->who = g_strdup (who);
  call->whys = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (self->calls, call);
  return call;
}

/* Where it went: the reason of a sale or a gift names the market or the person. */
static void
add_takers (SteadRecallAnswer *self)
{
  for (guint i = 0; i < self->trace->trace->gone->len; i++)
    {
      const SteadMove *move = self->trace->trace->gone->pdata[i];
      g_autofree char *how_much = stead_quantity_format (-move->quantity_base, move->unit);
      g_autofree char *day = stead_day_format (move->day, STEAD_DAY_STYLE_MEDIUM);
      const char *who = move->reason != NULL ? move->reason
                        : move->kind == STEAD_MOVE_SOLD ? _("Who bought it: nobody wrote down where it was sold")
                                                        : _("Who was given it: nobody wrote down whom");

      if (move->kind != STEAD_MOVE_SOLD && move->kind != STEAD_MOVE_GIVEN)
        continue;
      /* Translators: an amount, a thing, its lot, a day. */
      g_ptr_array_add (call_to (self, who)->whys,
                       g_strdup_printf (move->kind == STEAD_MOVE_SOLD ? _("%1$s of %2$s, lot %3$s, was sold on %4$s.")
                                                                      : _("%1$s of %2$s, lot %3$s, was given away on %4$s."),
                                        how_much, move->item_name, move->lot_code, day));
    }
}

/* As many codes of lots in one sentence; more are told in another one. */
#define MOST_CODES 36

/* Lots of one item from one supplier. */
typedef struct
{
  const SteadTraceLot *first;
  GString  *codes;
  double    base;
  SteadDay  from, to;
  int       n;
} Delivered;

static char *
delivered_text (const Delivered *delivered)
{
  const SteadTraceLot *lot = delivered->first;
  g_autofree char *how_much = stead_quantity_format (delivered->base, lot->unit);
  g_autofree char *from = stead_day_format (delivered->from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (delivered->to, STEAD_DAY_STYLE_MEDIUM);

  if (delivered->n == 1)
    /* Translators: an amount, a thing, its lot, a day. */
    return g_strdup_printf (_("%1$s of %2$s, lot %3$s, came from there on %4$s."), how_much, lot->item_name, lot->code, from);
  if (delivered->from == delivered->to)
    /* Translators: an amount, a thing, a day, two or more codes of lots. */
    return g_strdup_printf (_("%1$s of %2$s came from there on %3$s, lots %4$s."), how_much, lot->item_name, from,
                            delivered->codes->str);
  /* Translators: an amount, a thing, two days, two or more codes of lots. */
  return g_strdup_printf (_("%1$s of %2$s came from there from %3$s to %4$s, lots %5$s."), how_much, lot->item_name, from, to,
                          delivered->codes->str);
}

static void
tell_delivered (SteadRecallAnswer *self,
                Delivered         *delivered)
{
  if (delivered->n > 0)
    g_ptr_array_add (call_to (self, delivered->first->supplier)->whys, delivered_text (delivered));
  g_string_truncate (delivered->codes, 0);
  delivered->n = 0;
}

static void
add_delivered (Delivered           *delivered,
               const SteadTraceLot *lot)
{
  if (delivered->n == 0)
    {
      delivered->first = lot;
      delivered->base = 0;
      delivered->from = delivered->to = lot->day;
    }
  else
    g_string_append (delivered->codes, ", ");
  g_string_append (delivered->codes, lot->code);
  delivered->base += lot->in_base;
  delivered->from = MIN (delivered->from, lot->day);
  delivered->to = MAX (delivered->to, lot->day);
  delivered->n++;
}

static gboolean
is_bought (const SteadTraceLot *lot)
{
  return lot->supplier != NULL && lot->step <= 0;
}

static gboolean
is_same_ware (const SteadTraceLot *one,
              const SteadTraceLot *two)
{
  return one->item_id == two->item_id && g_str_equal (one->supplier, two->supplier);
}

/* Item by item: a flock ate of many lots of one feed. */
static void
add_suppliers (SteadRecallAnswer *self)
{
  const GPtrArray *lots = self->trace->trace->lots;
  g_autoptr(GString) codes = g_string_new (NULL);
  g_autofree gboolean *told = g_new0 (gboolean, MAX (lots->len, 1));
  Delivered delivered = { .codes = codes };

  for (guint i = 0; i < lots->len; i++)
    {
      const SteadTraceLot *lot = lots->pdata[i];

      if (told[i] || !is_bought (lot))
        continue;
      for (guint n = i; n < lots->len; n++)
        {
          const SteadTraceLot *other = lots->pdata[n];

          if (told[n] || !is_bought (other) || !is_same_ware (lot, other))
            continue;
          add_delivered (&delivered, other);
          told[n] = TRUE;
          if (delivered.n == MOST_CODES)
            tell_delivered (self, &delivered);
        }
      tell_delivered (self, &delivered);
    }
}

static void
add_deciders (SteadRecallAnswer *self)
{
  g_ptr_array_add (call_to (self, _("The advisor and the principal"))->whys,
                   g_strdup (_("They decide, and speak for the school.")));
  g_ptr_array_add (call_to (self, _("The local health department"))->whys,
                   g_strdup (_("It says what must be called back, and how people are told. Call it before anybody else "
                               "outside.")));
}

/* --- the drill ---------------------------------------------------------------------------- */

static gboolean
read_drill (SteadRecallAnswer  *self,
            SteadStore         *store,
            gint64              lot_id,
            gint64              drill_id,
            GError            **error)
{
  g_autoptr(GPtrArray) drills = NULL;

  self->minutes = NAN;
  if (drill_id != 0)
    {
      self->drill = stead_drill_repo_get (store, drill_id, error);
      if (self->drill == NULL)
        return FALSE;
    }
  else
    {
      drills = stead_drill_repo_list (store, error);
      if (drills == NULL)
        return FALSE;
      for (guint i = 0; i < drills->len && self->drill == NULL; i++)
        if (((const SteadDrill *) drills->pdata[i])->lot_id == lot_id)
          self->drill = g_ptr_array_steal_index (drills, i);
    }
  if (self->drill != NULL && self->drill->ended_at != STEAD_TIME_NONE)
    self->minutes = (double) (self->drill->ended_at - self->drill->started_at) / 60;
  return TRUE;
}

/* --- words ---------------------------------------------------------------------------------- */

static char *
sentence_of (const SteadRecallAnswer *self)
{
  GString *text = g_string_new (NULL);
  guint n = self->rows->len, calls = self->calls->len;
  g_autofree char *touched = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%u lot</b> is touched.",
                                                           "<b>%u lots</b> are touched.", n), n);
  g_autofree char *known = g_strdup_printf (_("The record accounts for <b>%s</b> of it."), self->share);
  g_autofree char *call = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%u call</b> has to be made.",
                                                        "<b>%u calls</b> have to be made.", calls), calls);

  stead_words_add (text, touched);
  stead_words_add (text, known);
  stead_words_add (text, call);
  if (!isnan (self->minutes))
    {
      int minutes = (int) lround (self->minutes);
      g_autofree char *took = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "The drill took %d minute.",
                                                            "The drill took %d minutes.", (gulong) minutes), minutes);

      stead_words_add (text, took);
      if (!isnan (self->drill->found_frac))
        {
          g_autofree char *share = stead_words_percent (self->drill->found_frac, 0);
          /* Translators: "96 %". */
          g_autofree char *found = g_strdup_printf (_("%s of it was found."), share);

          stead_words_add (text, found);
        }
    }
  return stead_words_end (text);
}

SteadRecallAnswer *
stead_recall_answer_new (SteadStore  *store,
                         gint64       lot_id,
                         gint64       drill_id,
                         GError     **error)
{
  g_autoptr(SteadRecallAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self = g_new0 (SteadRecallAnswer, 1);
  self->rows = g_ptr_array_new_with_free_func (row_free);
  self->calls = g_ptr_array_new_with_free_func (call_free);
  self->known_frac = 1;
  self->trace = stead_trace_answer_new (store, lot_id, error);
  if (self->trace == NULL)
    return NULL;
  for (guint i = 0; i < self->trace->ahead->len; i++)
    if (!add_row (self, store, self->trace->ahead->pdata[i], error))
      return NULL;
  self->out_base = self->trace->lot->sold_base + self->trace->lot->given_base;
  add_deciders (self);
  add_takers (self);
  add_suppliers (self);
  self->share = stead_recall_share_text (self->known_frac);
  if (!read_drill (self, store, lot_id, drill_id, error))
    return NULL;
  self->sentence = sentence_of (self);
  self->caution = g_strdup (_("In a real recall stop selling and using it first, hold back every lot on this sheet, and call "
                              "your local health department. Do not throw anything away before it says so."));
  return g_steal_pointer (&self);
}
