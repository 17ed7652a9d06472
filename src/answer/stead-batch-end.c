/* stead-batch-end.c - "What would be left behind if this batch ended?" */
#include "config.h"

#include "answer/stead-batch-end.h"

#include "answer/stead-batch-cost-why-private.h"
#include "answer/stead-fish-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

void
stead_batch_end_free (SteadBatchEnd *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->batch, stead_batch_free);
  g_clear_pointer (&self->whys, g_ptr_array_unref);
  g_free (self->text);
  g_free (self);
}

/* --- fish that swim ------------------------------------------------------------------------ */

static gboolean
read_alive (SteadBatchEnd           *self,
            SteadStore              *store,
            const SteadBatchAnswer  *answer,
            GString                 *text,
            GError                 **error)
{
  g_autoptr(SteadFish) group = NULL;
  g_autofree char *swim = NULL;
  SteadFishTotals totals;

  if (self->batch->kind != STEAD_BATCH_FISH)
    return TRUE;
  group = stead_fish_repo_get (store, self->batch->id, error);
  if (group == NULL
      || !stead_fish_repo_totals (store, self->batch->id, self->batch->started_on, answer->money.to, &totals, error))
    return FALSE;
  self->alive = stead_fish_repo_alive (store, self->batch->id, answer->money.to + 1, error);
  if (self->alive <= 0)
    return self->alive == 0;
  swim = g_strdup_printf (ngettext ("By the log %d fish still swims: enter its harvest, its death or its move first.",
                                    "By the log %d fish still swim: enter their harvest, deaths or move first.",
                                    stead_words_plural (self->alive)), (int) self->alive);
  stead_words_add (text, swim);
  g_ptr_array_add (self->whys, stead_fish_alive_why (group->stocked, &totals, self->alive));
  return TRUE;
}

/* --- cost that no lot carries ---------------------------------------------------------------- */

/* A flock's eggs leave it from day to day without a lot; without a harvest there is no lot that could carry it. */
static gboolean
carries_cost (const SteadBatchAnswer *answer)
{
  return answer->money.batch->kind != STEAD_BATCH_FLOCK && answer->money.harvested.good_base > 0
         && !answer->money.harvested.is_over;
}

static void
put_cost (SteadBatchEnd          *self,
          const SteadBatchAnswer *answer,
          GString                *text)
{
  const char *currency = answer->farm->currency;
  g_autofree char *money = NULL, *left = NULL;

  if (!carries_cost (answer))
    return;
  self->left_cents = stead_batch_left_cents (&answer->money.cost);
  if (self->left_cents == 0)
    return;
  money = stead_money_format (self->left_cents, currency);
  left = g_strdup_printf (_("%s of its cost is in no lot. Mark the last harvest as the last, and its lot "
                            "carries the rest."), money);
  stead_words_add (text, left);
  g_ptr_array_add (self->whys, stead_why_new (g_strdup (_("Cost in no lot")),
                                              _("Cost in so far − what the lots of its harvests carry. What is in no lot is in no "
                                                "price of what is sold."),
                                              stead_batch_left_sum (&answer->money.cost, currency),
                                              _("Common practice, no source.")));
  stead_whys_add (self->whys, stead_batch_spent_why (&answer->money, currency));
}

SteadBatchEnd *
stead_batch_end_new (SteadStore  *store,
                     gint64       batch_id,
                     GError     **error)
{
  g_autoptr(SteadBatchEnd) self = g_new0 (SteadBatchEnd, 1);
  g_autoptr(SteadBatchAnswer) answer = NULL;
  GString *text;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->whys = stead_whys_new ();
  answer = stead_batch_answer_new (store, batch_id, error);
  if (answer == NULL)
    return NULL;
  self->batch = stead_batch_copy (answer->money.batch);
  text = g_string_new (NULL);
  if (!read_alive (self, store, answer, text, error))
    {
      g_string_free (text, TRUE);
      return NULL;
    }
  put_cost (self, answer, text);
  self->text = stead_words_end (text);
  return g_steal_pointer (&self);
}
