/* stead-class-answer.c - "Who works on the farm?" */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-class-answer.h"

void
stead_class_answer_free (SteadClassAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->people, g_ptr_array_unref);
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

static char *
say (const SteadClassAnswer *self)
{
  int others = (int) self->people->len - self->n_students;
  g_autofree char *students = NULL, *grown = NULL;

  if (self->people->len == 0)
    return g_strdup (_("Nobody is entered yet."));
  students = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d student", "%d students", (gulong) self->n_students),
                              self->n_students);
  grown = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d advisor or helper", "%d advisors and helpers",
                                        (gulong) others), others);
  /* Translators: "14 students", "2 advisors and helpers". */
  return g_strdup_printf (_("<b>%1$s</b> and %2$s work on the farm."), students, grown);
}

SteadClassAnswer *
stead_class_answer_new (SteadStore  *store,
                        GError     **error)
{
  g_autoptr(SteadClassAnswer) self = g_new0 (SteadClassAnswer, 1);
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->people = stead_person_repo_list (store, error);
  if (self->people == NULL)
    return NULL;
  today = stead_store_get_today (store);
  for (guint i = self->people->len; i > 0; i--)
    {
      const SteadPerson *person = self->people->pdata[i - 1];

      if (person->left_on != STEAD_DAY_NONE && person->left_on <= today)
        g_ptr_array_remove_index (self->people, i - 1);
      else
        self->n_students += person->role == STEAD_PERSON_STUDENT;
    }
  self->sentence = say (self);
  return g_steal_pointer (&self);
}
