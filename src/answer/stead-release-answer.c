/* stead-release-answer.c - what left the farm, and who should be removed from it. */
#include "config.h"

#include "answer/stead-release-answer.h"
#include "store/stead-purge.h"

#include <glib/gi18n-lib.h>

void
stead_release_answer_free (SteadReleaseAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->releases, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

const char * const *
stead_release_grounds (void)
{
  static const char * const grounds[] = {
    N_("For the school's own use"),
    N_("The students, or their parents, agreed"),
    N_("The student asked for his or her own records"),
    N_("The law or a court asks for it"),
    NULL
  };

  return grounds;
}

static char *
say (const SteadReleaseAnswer *self)
{
  g_autofree char *left = NULL;

  if (self->due > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "<b>%u person</b> should be removed now: the school's day for it has come.",
                                         "<b>%u people</b> should be removed now: the school's day for it has come.",
                                         self->due), self->due);
  if (self->releases->len == 0)
    return g_strdup (_("Nothing leaves this computer by itself. What you export names nobody unless you ask for it."));
  left = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u time", "%u times", self->releases->len), self->releases->len);
  /* Translators: "3 times". */
  return g_strdup_printf (_("Records that name people left the farm <b>%s</b>."), left);
}

SteadReleaseAnswer *
stead_release_answer_new (SteadStore  *store,
                          GError     **error)
{
  g_autoptr(SteadReleaseAnswer) self = g_new0 (SteadReleaseAnswer, 1);
  g_autoptr(GPtrArray) people = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->releases = stead_release_repo_list (store, error);
  people = self->releases != NULL ? stead_purge_list (store, error) : NULL;
  if (people == NULL)
    return NULL;
  for (guint i = 0; i < people->len; i++)
    self->due += ((const SteadPurgePerson *) people->pdata[i])->due;
  self->sentence = say (self);
  return g_steal_pointer (&self);
}
