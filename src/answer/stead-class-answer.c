/* stead-class-answer.c - "Who works on the farm, and what does each still need?" */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-class-answer.h"
#include "answer/stead-hours-answer.h"
#include "core/stead-hours.h"

void
stead_class_row_free (SteadClassRow *row)
{
  if (row == NULL)
    return;
  stead_person_free (row->person);
  stead_class_sums_free (row->sums);
  g_free (row->needs);
  g_free (row);
}

void
stead_class_answer_free (SteadClassAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

const char *
stead_words_role (SteadPersonRole role)
{
  switch (role)
    {
    case STEAD_PERSON_ADVISOR: return C_("role", "Advisor");
    case STEAD_PERSON_HELPER:  return C_("role", "Helper");
    case STEAD_PERSON_STUDENT:
    default:                   return C_("role", "Student");
    }
}

/* --- words ------------------------------------------------------------------ */

/* @text: (transfer full) */
static void
add_need (GString *needs,
          int      n,
          char    *text)
{
  if (n > 0)
    g_string_append_printf (needs, "%s%s", needs->len > 0 ? "; " : "", text);
  g_free (text);
}

static char *
needs_of (const SteadClassSums *sums)
{
  int hours = sums->n_unchecked, papers = sums->n_receipts_bare, over = sums->n_trainings_over;
  GString *needs = g_string_new (NULL);

  add_need (needs, hours, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d entry of hours to check",
                                                        "%d entries of hours to check", (gulong) hours), hours));
  add_need (needs, papers, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d receipt without its paper",
                                                         "%d receipts without their paper", (gulong) papers), papers));
  add_need (needs, over, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d training is over", "%d trainings are over",
                                                       (gulong) over), over));
  return g_string_free (needs, FALSE);
}

static char *
say (const SteadClassAnswer *self)
{
  int others = (int) self->rows->len - self->n_students;
  g_autofree char *students = NULL, *grown = NULL, *hours = NULL;

  if (self->rows->len == 0)
    return g_strdup (_("Nobody is entered yet."));
  students = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d student", "%d students", (gulong) self->n_students),
                              self->n_students);
  grown = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d advisor or helper", "%d advisors and helpers",
                                        (gulong) others), others);
  if (self->minutes == 0)
    /* Translators: "14 students", "2 advisors and helpers". */
    return g_strdup_printf (_("<b>%1$s</b> and %2$s work on the farm."), students, grown);
  hours = stead_hours_words (self->minutes);
  /* Translators: "14 students", "2 advisors and helpers", hours. */
  return g_strdup_printf (_("<b>%1$s</b> and %2$s worked <b>%3$s</b> in this school year."), students, grown, hours);
}

/* --- the answer ------------------------------------------------------------- */

static const SteadClassSums *
sums_of (const GPtrArray *sums,
         gint64           person_id,
         guint           *out_at)
{
  for (guint i = 0; i < sums->len; i++)
    if (((const SteadClassSums *) sums->pdata[i])->person_id == person_id)
      {
        *out_at = i;
        return sums->pdata[i];
      }
  return NULL;
}

static void
add_row (SteadClassAnswer *self,
         SteadPerson      *person,
         SteadClassSums   *sums)
{
  SteadClassRow *row = g_new0 (SteadClassRow, 1);

  row->person = person;
  row->sums = sums;
  row->needs = needs_of (sums);
  self->n_students += person->role == STEAD_PERSON_STUDENT;
  self->minutes += sums->minutes;
  self->n_late += sums->n_late;
  self->n_unchecked += sums->n_unchecked;
  self->n_receipts_bare += sums->n_receipts_bare;
  self->n_trainings_over += sums->n_trainings_over;
  g_ptr_array_add (self->rows, row);
}

static gboolean
read_rows (SteadStore        *store,
           SteadClassAnswer  *self,
           GError           **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);
  g_autoptr(GPtrArray) sums = people != NULL ? stead_class_repo_sums (store, self->from, self->to, STEAD_HOURS_LATE_DAYS,
                                                                     error) : NULL;

  if (sums == NULL)
    return FALSE;
  for (guint i = 0; i < people->len; i++)
    {
      guint at = 0;

      if (sums_of (sums, ((SteadPerson *) people->pdata[i])->id, &at) != NULL)
        {
          add_row (self, people->pdata[i], g_ptr_array_steal_index (sums, at));
          people->pdata[i] = NULL;
        }
    }
  return TRUE;
}

SteadClassAnswer *
stead_class_answer_new (SteadStore  *store,
                        GError     **error)
{
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(SteadClassAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  farm = stead_farm_repo_get (store, error);
  if (farm == NULL)
    return NULL;
  self = g_new0 (SteadClassAnswer, 1);
  self->to = stead_store_get_today (store);
  self->from = stead_school_year_start (self->to, farm->school_year_month, farm->school_year_mday);
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_class_row_free);
  self->n_skills = stead_class_repo_skills (store, error);
  if (self->n_skills < 0 || !read_rows (store, self, error))
    return NULL;
  self->sentence = say (self);
  return g_steal_pointer (&self);
}
