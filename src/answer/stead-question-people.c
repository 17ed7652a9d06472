/* stead-question-people.c - the class, its hours and its results as figures for programs.
 *
 * Names are never translated, money is in minor units, days are as 2026-03-03.
 */
#include "config.h"

#include "answer/stead-class-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-question-private.h"
#include "answer/stead-results-answer.h"
#include "answer/stead-words.h"

static void
put_person (JsonBuilder   *out,
            gconstpointer  item)
{
  const SteadClassRow *row = item;

  stead_put_text (out, "name", row->person->name);
  stead_put_int (out, "minutes", row->sums->minutes);
  stead_put_int (out, "late_entries", row->sums->n_late);
  stead_put_int (out, "unchecked_entries", row->sums->n_unchecked);
  stead_put_int (out, "skills", row->sums->n_skills);
}

static void
put_duty (JsonBuilder   *out,
          gconstpointer  item)
{
  const SteadHoursDuty *duty = item;

  stead_put_text (out, "duty", duty->duty);
  stead_put_int (out, "paid_minutes", duty->paid_min);
  stead_put_int (out, "unpaid_minutes", duty->unpaid_min);
}

static void
put_share (JsonBuilder   *out,
           gconstpointer  item)
{
  const SteadResultShare *share = item;

  stead_put_text (out, "name", share->name);
  stead_put_int (out, "minutes", share->minutes);
  stead_put_int (out, "cents", share->cents);
}

char *
stead_question_class (SteadStore   *store,
                      gint64        id,
                      JsonBuilder  *out,
                      GError      **error)
{
  g_autoptr(SteadClassAnswer) answer = stead_class_answer_new (store, error);

  if (answer == NULL)
    return NULL;
  stead_put_day (out, "from", answer->from);
  stead_put_day (out, "to", answer->to);
  stead_put_int (out, "students", answer->n_students);
  stead_put_int (out, "minutes", answer->minutes);
  stead_put_int (out, "late_entries", answer->n_late);
  stead_put_int (out, "unchecked_entries", answer->n_unchecked);
  stead_put_int (out, "receipts_without_paper", answer->n_receipts_bare);
  stead_put_int (out, "trainings_over", answer->n_trainings_over);
  stead_put_list (out, "people", answer->rows, put_person);
  return stead_words_plain (answer->sentence);
}

/* @id: a person, or 0 for all; the school year. */
char *
stead_question_hours (SteadStore   *store,
                      gint64        id,
                      JsonBuilder  *out,
                      GError      **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(SteadHoursAnswer) answer = NULL;
  SteadDay today = stead_store_get_today (store);

  if (farm == NULL)
    return NULL;
  answer = stead_hours_answer_new (store, stead_school_year_start (today, farm->school_year_month, farm->school_year_mday),
                                   today, id, error);
  if (answer == NULL)
    return NULL;
  stead_put_day (out, "from", answer->from);
  stead_put_day (out, "to", answer->to);
  stead_put_int (out, "entries", answer->spans->len);
  stead_put_int (out, "paid_minutes", answer->paid_min);
  stead_put_int (out, "unpaid_minutes", answer->unpaid_min);
  stead_put_int (out, "unpaid_value_cents", answer->value_cents);
  stead_put_int (out, "late_entries", answer->n_late);
  stead_put_int (out, "unchecked_entries", answer->n_unchecked);
  stead_put_int (out, "corrections", answer->n_corrections);
  stead_put_list (out, "duties", answer->duties, put_duty);
  return stead_words_plain (answer->sentence);
}

/* @id: an enterprise, or 0 for the whole farm; the school year. */
char *
stead_question_results (SteadStore   *store,
                        gint64        id,
                        JsonBuilder  *out,
                        GError      **error)
{
  g_autoptr(SteadResultsAnswer) answer = stead_results_answer_new (store, id, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_day (out, "from", answer->from);
  stead_put_day (out, "to", answer->to);
  stead_put_int (out, "sales_cents", answer->sales_cents);
  stead_put_int (out, "net_cents", answer->net_cents);
  stead_put_int (out, "worth_change_cents", answer->worth_change_cents);
  stead_put_int (out, "minutes", answer->minutes);
  stead_put_int (out, "unpaid_minutes", answer->unpaid_min);
  stead_put_real (out, "per_hour_cents", answer->per_hour_cents);
  stead_put_list (out, "shares", answer->shares, put_share);
  return stead_words_plain (answer->sentence);
}
