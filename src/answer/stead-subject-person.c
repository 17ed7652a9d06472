/* stead-subject-person.c - whom a question or a paper is about, by name. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-subject.h"

#include <glib/gi18n-lib.h>

/* Names of a few are enough in a message. */
#define MOST_NAMES 12

SteadPerson *
stead_subject_person (SteadStore  *store,
                      const char  *name,
                      GError     **error)
{
  g_autoptr(GPtrArray) people = NULL;
  g_autoptr(GString) names = g_string_new (NULL);
  g_autofree char *bare = name != NULL ? g_strstrip (g_strdup (name)) : NULL;
  g_autofree char *wanted = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  people = stead_person_repo_list (store, error);
  if (people == NULL)
    return NULL;
  wanted = bare != NULL ? g_utf8_casefold (bare, -1) : NULL;
  for (guint i = 0; i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      g_autofree char *its = g_utf8_casefold (person->name, -1);

      if (wanted == NULL ? person->role == STEAD_PERSON_STUDENT && person->left_on == STEAD_DAY_NONE
                         : g_str_equal (its, wanted))
        return g_ptr_array_steal_index (people, i);
      if (i < MOST_NAMES)
        g_string_append_printf (names, "%s%s", i > 0 ? ", " : "", person->name);
    }
  if (wanted == NULL)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("No student is entered yet. Enter the class in Show."));
  else
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN, _("Nobody is called “%s”. There is: %s."),
                 name, names->str);
  return NULL;
}
