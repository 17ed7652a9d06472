/* stead-reflect-answer.c - "What happened that is worth a thought?" */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-batch-answer.h"
#include "answer/stead-reflect-answer.h"
#include "answer/stead-sale-result-answer.h"
#include "core/stead-money.h"
#include "store/stead-batch-repo.h"
#include "store/stead-crop-repo.h"
#include "store/stead-shown-repo.h"
#include "store/stead-skill-repo.h"

/* Fewer days written down in a week tell nothing of it. */
#define LEAST_DAYS 4

void
stead_reflect_question_free (SteadReflectQuestion *question)
{
  if (question == NULL)
    return;
  g_free (question->text);
  g_free (question);
}

void
stead_reflect_answer_free (SteadReflectAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->questions, g_ptr_array_unref);
  g_clear_pointer (&self->thoughts, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

/* @text: (transfer full) */
static SteadReflectQuestion *
ask (SteadReflectAnswer *self,
     SteadDay            day,
     char               *text,
     SteadTarget         target,
     gint64              target_id)
{
  SteadReflectQuestion *question = g_new0 (SteadReflectQuestion, 1);

  question->day = day;
  question->text = text;
  question->target = target;
  question->target_id = target_id;
  g_ptr_array_add (self->questions, question);
  return question;
}

/* --- a week in which hens laid less --------------------------------------------------- */

/* Mean of the nights outdoors; NAN if too few are known. */
static gboolean
nights (SteadStore  *store,
        SteadDay     from,
        SteadDay     to,
        double      *out_c,
        GError     **error)
{
  g_autoptr(GPtrArray) days = stead_climate_repo_list (store, 0, from, to, error);
  double sum = 0;
  int n = 0;

  if (days == NULL)
    return FALSE;
  for (guint i = 0; i < days->len; i++)
    {
      const SteadClimateDay *day = days->pdata[i];

      if (!isnan (day->min_c))
        {
          sum += day->min_c;
          n++;
        }
    }
  *out_c = n >= LEAST_DAYS ? sum / n : NAN;
  return TRUE;
}

static gboolean
ask_week (SteadStore          *store,
          SteadReflectAnswer  *self,
          const SteadFlock    *flock,
          SteadDay             first,
          gboolean            *out_asked,
          GError             **error)
{
  SteadFlockTotals before, now;
  g_autofree char *fall = NULL, *day = NULL;
  double cold_before, cold_now, was, is;

  if (!stead_flock_repo_totals (store, flock->id, first - 7, first - 1, &before, error)
      || !stead_flock_repo_totals (store, flock->id, first, first + 6, &now, error)
      || !nights (store, first - 7, first - 1, &cold_before, error)
      || !nights (store, first, first + 6, &cold_now, error))
    return FALSE;
  was = stead_flock_hen_day_frac (before.eggs, before.hen_days);
  is = stead_flock_hen_day_frac (now.eggs, now.hen_days);
  if (!(was > 0 && 1 - is / was >= STEAD_REFLECT_FALL_FRAC))
    return TRUE;
  fall = stead_words_percent (1 - is / was, 0);
  day = stead_day_format (first, STEAD_DAY_STYLE_MEDIUM);
  *out_asked = TRUE;
  if (cold_before - cold_now >= STEAD_REFLECT_COLD_C)
    /* Translators: the name of a flock, "12 %", a day. */
    ask (self, first, g_strdup_printf (_("The lay of %1$s fell by %2$s in the cold week from %3$s. What did you see, and "
                                         "what did you change?"), flock->name, fall, day),
         STEAD_TARGET_FLOCK, flock->id)->batch_id = flock->id;
  else
    ask (self, first, g_strdup_printf (_("The lay of %1$s fell by %2$s in the week from %3$s. What can have caused it, "
                                         "and how would you find out?"), flock->name, fall, day),
         STEAD_TARGET_FLOCK, flock->id)->batch_id = flock->id;
  return TRUE;
}

/* The latest such week of each flock. */
static gboolean
ask_lay (SteadStore          *store,
         SteadReflectAnswer  *self,
         SteadDay             from,
         SteadDay             to,
         GError             **error)
{
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (store, FALSE, error);

  for (guint i = 0; flocks != NULL && i < flocks->len; i++)
    {
      const SteadFlock *flock = flocks->pdata[i];
      gboolean asked = FALSE;

      for (SteadDay first = to - 6; first >= from && first - 7 >= flock->housed_on && !asked; first -= 7)
        if (!ask_week (store, self, flock, first, &asked, error))
          return FALSE;
    }
  return flocks != NULL;
}

/* --- readings that had to be put right -------------------------------------------------- */

static gboolean
ask_readings (SteadStore          *store,
              SteadReflectAnswer  *self,
              SteadDay             from,
              SteadDay             to,
              GError             **error)
{
  g_autoptr(GPtrArray) dones = stead_done_repo_of_days (store, from, to, error);
  g_autoptr(GHashTable) lists = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);

  for (guint i = 0; dones != NULL && i < dones->len; i++)
    {
      const SteadDone *done = dones->pdata[i];
      g_autoptr(SteadEvidence) row = stead_skill_repo_row (store, STEAD_EVIDENCE_READING, done->reading_id, error);
      g_autofree char *day = NULL;

      if (row == NULL)
        return FALSE;
      if (row->is_gone || row->name == NULL
          || !g_hash_table_add (lists, g_memdup2 (&row->target_id, sizeof row->target_id)))
        continue;
      day = stead_day_format (row->day, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: the name of a checklist, a day. */
      ask (self, row->day, g_strdup_printf (_("A reading of “%1$s” on %2$s was out of its limit. Why does that limit "
                                              "matter, and how do you keep to it next time?"), row->name, day),
           STEAD_TARGET_CHECKLIST, row->target_id);
    }
  return dones != NULL;
}

/* --- sale days ------------------------------------------------------------------------------ */

static gboolean
ask_sale (SteadStore          *store,
          SteadReflectAnswer  *self,
          const SteadSale     *sale,
          GError             **error)
{
  g_autoptr(SteadResultAnswer) result = stead_result_answer_new (store, sale->id, error);
  g_autofree char *money = NULL, *day = NULL;
  SteadReflectQuestion *question;
  char *text;

  if (result == NULL)
    return FALSE;
  if (result->count == NULL)
    return TRUE;
  money = stead_money_format (ABS (result->over_cents), result->farm->currency);
  day = stead_day_format (sale->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: in each of these the name of a sale day and its day; then a sum of money. */
  if (result->over_cents < 0)
    text = g_strdup_printf (_("The cash of %1$s on %2$s was %3$s short. How would you find where it came from?"),
                            sale->name, day, money);
  else if (result->over_cents > 0)
    text = g_strdup_printf (_("The cash of %1$s on %2$s was %3$s over. How would you find where it came from?"),
                            sale->name, day, money);
  else
    text = g_strdup_printf (_("The cash of %1$s on %2$s came out to the cent. What did the team do that made it so?"),
                            sale->name, day);
  question = ask (self, sale->day, text, STEAD_TARGET_SALE, sale->id);
  question->sale_id = sale->id;
  return TRUE;
}

static gboolean
ask_sales (SteadStore          *store,
           SteadReflectAnswer  *self,
           SteadDay             from,
           SteadDay             to,
           GError             **error)
{
  g_autoptr(GPtrArray) sales = stead_sale_repo_list (store, error);

  for (guint i = 0; sales != NULL && i < sales->len; i++)
    {
      const SteadSale *sale = sales->pdata[i];

      if (sale->day >= from && sale->day <= to && sale->closed_at != STEAD_SALE_NO_TIME
          && !ask_sale (store, self, sale, error))
        return FALSE;
    }
  return sales != NULL;
}

/* --- batches that ended ---------------------------------------------------------------------- */

static gboolean
ask_batch (SteadStore          *store,
           SteadReflectAnswer  *self,
           const SteadBatch    *batch,
           GError             **error)
{
  g_autoptr(SteadBatchAnswer) answer = stead_batch_answer_new (store, batch->id, error);
  g_autofree char *money = NULL;
  double under;

  if (answer == NULL)
    return FALSE;
  under = answer->has_variance ? answer->variance.planned_cents - answer->variance.actual_cents : 0;
  if (!(under >= 100))
    return TRUE;
  money = stead_money_format (stead_money_round (under), answer->farm->currency);
  /* Translators: the name of a batch, a sum of money. */
  ask (self, batch->ended_on, g_strdup_printf (_("%1$s brought %2$s less than planned. Which part of it could you change "
                                                 "next time?"), batch->name, money),
       batch->kind == STEAD_BATCH_KITCHEN ? STEAD_TARGET_KITCHEN : STEAD_TARGET_BATCH, batch->id)->batch_id = batch->id;
  return TRUE;
}

static gboolean
ask_batches (SteadStore          *store,
             SteadReflectAnswer  *self,
             SteadDay             from,
             SteadDay             to,
             GError             **error)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, error);

  for (guint i = 0; batches != NULL && i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];

      if (batch->ended_on != STEAD_DAY_NONE && batch->ended_on >= from && batch->ended_on <= to
          && !ask_batch (store, self, batch, error))
        return FALSE;
    }
  return batches != NULL;
}

/* --- the answer ------------------------------------------------------------------------------- */

static int
compare_latest (gconstpointer one,
                gconstpointer two)
{
  const SteadReflectQuestion *a = *(SteadReflectQuestion * const *) one;
  const SteadReflectQuestion *b = *(SteadReflectQuestion * const *) two;

  return a->day != b->day ? (a->day > b->day ? -1 : 1) : g_strcmp0 (a->text, b->text);
}

/* By the words of the question: the same happening asks in the same words. */
static void
mark_answered (SteadReflectAnswer *self)
{
  for (guint i = 0; i < self->questions->len; i++)
    {
      SteadReflectQuestion *question = self->questions->pdata[i];

      for (guint k = 0; k < self->thoughts->len; k++)
        if (g_strcmp0 (((const SteadReflection *) self->thoughts->pdata[k])->question, question->text) == 0)
          question->is_answered = TRUE;
      self->n_open += !question->is_answered;
    }
}

SteadReflectAnswer *
stead_reflect_answer_new (SteadStore  *store,
                          gint64       person_id,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  g_autoptr(SteadReflectAnswer) self = g_new0 (SteadReflectAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store) && from <= to, NULL);
  self->questions = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_reflect_question_free);
  self->thoughts = stead_reflection_repo_list (store, person_id, error);
  if (self->thoughts == NULL || !ask_lay (store, self, from, to, error) || !ask_readings (store, self, from, to, error)
      || !ask_sales (store, self, from, to, error) || !ask_batches (store, self, from, to, error))
    return NULL;
  g_ptr_array_sort (self->questions, compare_latest);
  mark_answered (self);
  if (self->n_open == 0)
    self->sentence = g_strdup (_("No question is open. A thought of your own is welcome at any time."));
  else
    self->sentence = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d</b> thing that happened is worth a thought.",
                                                   "<b>%d</b> things that happened are worth a thought.",
                                                   (gulong) self->n_open), self->n_open);
  return g_steal_pointer (&self);
}
