/* stead-demo-class.c - the rest of the class: who belongs together, who does what, who was shown
 * how, and a term of hours.
 *
 * Written last, with a chance of its own, so that the story of the animals stays what it is.
 */
#include "config.h"

#include <gsl/gsl_randist.h>
#include <string.h>

#include "store/stead-batch-repo.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-farm-repo.h"
#include "store/stead-people-repo.h"
#include "store/stead-repo-private.h"
#include "store/stead-sale-repo.h"
#include "store/stead-work-repo.h"

#define TERM_WEEKS 15
#define CHECKED_TO 13     /* days ago: what is older is checked */
#define LATE_DAYS 9
#define SKIPPED 0.15      /* of all turns: ill, away, forgotten */
#define LATE 0.04

/* People and groups by their names. */
static gint64
find_person (SteadDemoWriter *writer,
             const char      *name)
{
  return stead_demo_id_of (writer, "mate", name);
}

static gboolean
remember_people (SteadDemoWriter  *writer,
                 GError          **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (writer->store, error);

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      g_autofree char *key = g_strconcat ("mate ", person->name, NULL);

      stead_demo_set_id (writer, key, person->id);
    }
  return people != NULL;
}

static SteadDay
monday_of (SteadDay day)
{
  return day - (stead_day_weekday (day) - 1);
}

static gboolean
write_mate (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  static const char * const roles[] = { "student", "advisor", "helper", NULL };
  const char *group = what;
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  SteadPerson person = { .name = name, .left_on = STEAD_DAY_NONE,
                         .role = (SteadPersonRole) stead_demo_word_of (writer, group, "role", roles) };
  int year, month;

  if (person.role == STEAD_PERSON_STUDENT)
    {
      stead_day_split (writer->story->today, &year, &month, NULL);
      person.class_year = year + (month >= 8 ? 1 : 0) +
                          (int) stead_demo_number_if (&writer->story->reader, group, "graduates_in", 0);
    }
  return stead_demo_sound (writer, error) && stead_person_repo_save (writer->store, &person, error);
}

static gboolean
write_group (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  const char *group = what;
  g_auto(GStrv) members = stead_demo_list (&writer->story->reader, group, "members");
  g_autoptr(SteadGroup) list = stead_group_new ();
  g_autofree char *key = NULL;

  list->name = g_strdup (stead_demo_group_name (group));
  for (gsize i = 0; members[i] != NULL; i++)
    {
      gint64 id = find_person (writer, members[i]);

      g_array_append_val (list->person_ids, id);
    }
  if (!stead_demo_sound (writer, error) || !stead_group_repo_save (writer->store, list, error))
    return FALSE;
  key = g_strconcat ("list ", list->name, NULL);
  stead_demo_set_id (writer, key, list->id);
  return TRUE;
}

/* A duty with its turns: "Monday's and Wednesday's, at 7:15, are the early birds'". */
static gboolean
write_turn (SteadDemoWriter  *writer,
            gint64            duty_id,
            const char       *text,
            const char       *group,
            GError          **error)
{
  g_auto(GStrv) parts = g_strsplit (text, ",", 3);
  SteadTurn turn = { .duty_id = duty_id, .at_minute = -1, .to_on = STEAD_DAY_NONE };

  if (g_strv_length (parts) != 3)
    {
      stead_demo_fault (&writer->story->reader, group, "turns");
      return stead_demo_sound (writer, error);
    }
  turn.weekday = (int) stead_demo_number_of (&writer->story->reader, g_strstrip (parts[0]));
  turn.at_minute = (int) stead_demo_number_of (&writer->story->reader, g_strstrip (parts[1]));
  turn.from_on = monday_of (writer->story->today) - 7 * TERM_WEEKS;
  g_strstrip (parts[2]);
  if (g_str_has_prefix (parts[2], "list "))
    turn.group_id = stead_demo_id_of (writer, "list", parts[2] + strlen ("list "));
  else
    turn.person_id = find_person (writer, parts[2]);
  return stead_demo_sound (writer, error) && stead_turn_repo_save (writer->store, &turn, error);
}

static gboolean
write_duty (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  const char *group = what;
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  g_autofree char *needs = stead_demo_text_if (&writer->story->reader, group, "needs");
  g_auto(GStrv) turns = stead_demo_list (&writer->story->reader, group, "turns");
  SteadDuty duty = { .name = name, .needs = needs, .retired_on = STEAD_DAY_NONE };

  if (!stead_demo_sound (writer, error) || !stead_duty_repo_save (writer->store, &duty, error))
    return FALSE;
  for (gsize i = 0; turns[i] != NULL; i++)
    if (!write_turn (writer, duty.id, turns[i], group, error))
      return FALSE;
  return TRUE;
}

static gboolean
write_training (SteadDemoWriter  *writer,
                gconstpointer     what,
                GError          **error)
{
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) people = stead_demo_list (reader, group, "people");
  g_autofree char *subject = g_strdup (stead_demo_group_name (group));
  int ago = (int) stead_demo_number (reader, group, "days_ago"), holds = (int) stead_demo_number (reader, group, "holds_days");

  for (gsize i = 0; people[i] != NULL && stead_demo_sound (writer, error); i++)
    {
      SteadTraining training = { .person_id = find_person (writer, people[i]), .subject = subject,
                                 .given_on = writer->story->today - ago, .until_on = STEAD_DAY_NONE,
                                 .given_by = writer->advisor_id };

      if (holds > 0)
        training.until_on = training.given_on + holds;
      if (!stead_demo_sound (writer, error) || !stead_training_repo_save (writer->store, &training, error))
        return FALSE;
    }
  return stead_demo_sound (writer, error);
}

/* All students but the last two may be named; half of them may be shown. */
static gboolean
write_consents (SteadDemoWriter  *writer,
                gconstpointer     what,
                GError          **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (writer->store, error);
  int n = 0;

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      SteadConsent consent = { .person_id = person->id, .what = STEAD_CONSENT_NAME,
                               .given_on = monday_of (writer->story->today) - 7 * TERM_WEEKS, .ended_on = STEAD_DAY_NONE };

      if (person->role != STEAD_PERSON_STUDENT || person->left_on != STEAD_DAY_NONE)
        continue;
      if (n < 12 && !stead_consent_repo_save (writer->store, &consent, error))
        return FALSE;
      consent.id = 0;
      consent.what = STEAD_CONSENT_PICTURE;
      if (n++ % 2 == 0 && !stead_consent_repo_save (writer->store, &consent, error))
        return FALSE;
    }
  return people != NULL;
}

/* --- hours ------------------------------------------------------------------ */

typedef struct
{
  gsl_rng    *rng;
  const char *duty;
  int         at_minute;
  int         minutes;
  gboolean    paid;
  GPtrArray  *batches;      /* of SteadBatch */
  char       *batch;        /* (nullable): what it belongs to; "kitchen": what was cooked on the day */
  gint64      phase_id;     /* of a build; 0: none */
} Work;

static gint64
batch_of (const Work *work,
          SteadDay    day)
{
  gboolean kitchen = g_strcmp0 (work->batch, "kitchen") == 0;

  for (guint i = 0; work->batch != NULL && i < work->batches->len; i++)
    {
      const SteadBatch *batch = work->batches->pdata[i];

      if (kitchen ? batch->kind == STEAD_BATCH_KITCHEN && batch->started_on == day
                  : batch->started_on <= day && g_str_equal (batch->name, work->batch))
        return batch->id;
    }
  return 0;
}

static gboolean
write_span (SteadDemoWriter  *writer,
            const Work       *work,
            gint64            person_id,
            SteadDay          day,
            GError          **error)
{
  SteadWorkSpan span = { .person_id = person_id, .day = day, .duty = (char *) work->duty, .paid = work->paid,
                         .batch_id = batch_of (work, day), .phase_id = work->phase_id };
  int minutes = work->minutes + 5 * (int) gsl_rng_uniform_int (work->rng, 5);
  gboolean skipped = gsl_rng_uniform (work->rng) < SKIPPED, late = gsl_rng_uniform (work->rng) < LATE;

  if (skipped || day >= writer->story->today)
    return TRUE;
  span.minutes = minutes;
  span.from_at = stead_sale_time (day, work->at_minute);
  span.to_at = span.from_at + minutes * 60;
  stead_store_set_today (writer->store, MIN (writer->story->today, day + (late ? LATE_DAYS : 0)));
  return stead_work_repo_add (writer->store, &span, error);
}

/* Days of the term: those of the week, or so many days ago. */
static GArray *
days_of (SteadDemoWriter *writer,
         const char      *group)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) ago = stead_demo_list (reader, group, "days_ago"), weekdays = stead_demo_list (reader, group, "weekdays");
  SteadDay first = monday_of (writer->story->today) - 7 * TERM_WEEKS;
  GArray *days = g_array_new (FALSE, FALSE, sizeof (SteadDay));

  for (gsize i = 0; ago[i] != NULL; i++)
    {
      SteadDay day = writer->story->today - (SteadDay) stead_demo_number_of (reader, ago[i]);

      g_array_append_val (days, day);
    }
  for (int week = 0; week <= TERM_WEEKS; week++)
    for (gsize i = 0; weekdays[i] != NULL; i++)
      {
        SteadDay day = first + 7 * week + (SteadDay) stead_demo_number_of (reader, weekdays[i]) - 1;

        g_array_append_val (days, day);
      }
  return days;
}

static gboolean
write_work (SteadDemoWriter  *writer,
            const char       *group,
            GPtrArray        *batches,
            gsl_rng          *rng,
            GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) people = stead_demo_list (reader, group, "people");
  g_autofree char *batch = stead_demo_text_if (reader, group, "batch");
  g_autofree char *phase = stead_demo_text_if (reader, group, "phase");
  g_autoptr(GArray) days = days_of (writer, group);
  Work work = { rng, stead_demo_group_name (group), (int) stead_demo_number (reader, group, "at"),
                (int) stead_demo_number (reader, group, "minutes"),
                stead_demo_number_if (reader, group, "paid", 0) > 0, batches, batch,
                phase != NULL ? stead_demo_id_of (writer, "phase", phase) : 0 };

  for (guint d = 0; d < days->len; d++)
    for (gsize p = 0; people[p] != NULL; p++)
      {
        gint64 person = find_person (writer, people[p]);

        if (!stead_demo_sound (writer, error) ||
            !write_span (writer, &work, person, g_array_index (days, SteadDay, d), error))
          return FALSE;
      }
  return stead_demo_sound (writer, error);
}

/* One entry was found wrong after it had been checked. */
static gboolean
correct_one (SteadDemoWriter  *writer,
             GError          **error)
{
  SteadDay day = writer->story->today - CHECKED_TO - 7;
  g_autoptr(GPtrArray) spans = stead_work_repo_list (writer->store, day - 7, day, 0, error);
  SteadWorkSpan *span = spans != NULL && spans->len > 0 ? spans->pdata[0] : NULL;

  if (span == NULL)
    return spans != NULL;
  span->corrects_id = span->id;
  span->id = 0;
  span->minutes -= 15;
  span->to_at -= 15 * 60;
  return stead_work_repo_enter (writer->store, span, NULL, error);
}

static gboolean
write_hours (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, "hours");
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (writer->store, TRUE, error);
  gsl_rng *rng = NULL;
  gboolean good = TRUE;
  int n = 0;

  if (batches == NULL)
    return FALSE;
  rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsl_rng_set (rng, 7);
  for (gsize i = 0; groups[i] != NULL && good; i++)
    good = write_work (writer, groups[i], batches, rng, error);
  gsl_rng_free (rng);
  stead_store_set_today (writer->store, writer->story->today - CHECKED_TO + 1);
  good = good && stead_work_repo_check (writer->store, monday_of (writer->story->today) - 7 * TERM_WEEKS,
                                        writer->story->today - CHECKED_TO, 0, writer->advisor_id, &n, error);
  stead_store_set_today (writer->store, writer->story->today);
  return good && correct_one (writer, error);
}

gboolean
stead_demo_write_class (SteadDemoWriter  *writer,
                        GError          **error)
{
  stead_store_set_today (writer->store, writer->story->today);
  return stead_demo_write_groups (writer, "classmate", write_mate, error) && remember_people (writer, error) &&
         stead_demo_write_groups (writer, "group", write_group, error) &&
         stead_demo_write_groups (writer, "duty", write_duty, error) &&
         stead_demo_write_groups (writer, "training", write_training, error) &&
         stead_demo_act (writer, "consent", write_consents, NULL, error) &&
         stead_demo_act (writer, "hours", write_hours, NULL, error);
}
