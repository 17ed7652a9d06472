/* stead-subject-build.c - which build a paper is about, by name. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-subject.h"
#include "store/stead-build-repo.h"

#include <glib/gi18n-lib.h>

static gboolean
is_called (const SteadBuild *build,
           const char       *name)
{
  g_autofree char *bare = g_strstrip (g_strdup (name));
  g_autofree char *wanted = g_utf8_casefold (bare, -1);
  g_autofree char *its = g_utf8_casefold (build->name, -1);

  return g_str_equal (wanted, its);
}

gboolean
stead_subject_build (SteadStore  *store,
                     const char  *name,
                     gint64      *out_id,
                     GError     **error)
{
  g_autoptr(GPtrArray) builds = NULL;
  g_autoptr(GString) names = g_string_new (NULL);

  g_return_val_if_fail (out_id != NULL, FALSE);
  builds = stead_build_repo_list (store, error);
  if (builds == NULL)
    return FALSE;
  for (guint i = 0; i < builds->len; i++)
    {
      const SteadBuild *build = builds->pdata[i];

      g_string_append_printf (names, i == 0 ? "%s" : ", %s", build->name);
      if (name != NULL && !is_called (build, name))
        continue;
      *out_id = build->id;
      return TRUE;
    }
  if (builds->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no build yet. Begin one in Fund."));
  else
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                 _("No build is called “%s”. There is: %s."), name, names->str);
  return FALSE;
}
