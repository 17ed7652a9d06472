/* stead-handout-answer.c - "Whom does this document tell of, once it is handed out?" */
#include "config.h"

#include "answer/stead-handout-answer.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-hours-answer.h"
#include "answer/stead-packet-answer.h"
#include "answer/stead-subject.h"
#include "answer/stead-words-private.h"

void
stead_handout_answer_free (SteadHandoutAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->people, g_array_unref);
  g_free (self->what);
  g_free (self->sentence);
  g_free (self);
}

static void
add (SteadHandoutAnswer *self,
     GPtrArray          *names,
     gint64              person_id,
     const char         *name)
{
  g_array_append_val (self->people, person_id);
  g_ptr_array_add (names, g_strdup (name));
}

static char *
say_packet (const SteadPacket *packet)
{
  GString *text = g_string_new (NULL);
  /* Translators: the name of a packet. */
  g_autofree char *which = g_strdup_printf (_("Packet “%s”."), packet->name);

  stead_words_add (text, which);
  if (packet->with_pictures)
    stead_words_add (text, _("It shows pictures."));
  if (packet->with_names)
    stead_words_add (text, _("It names others who agreed to it."));
  return stead_words_end (text);
}

static gboolean
of_packet (SteadHandoutAnswer  *self,
           GPtrArray           *names,
           SteadStore          *store,
           const char          *of,
           GError             **error)
{
  g_autoptr(SteadPacket) packet = NULL;
  g_autoptr(GPtrArray) people = NULL;
  gint64 id;

  if (!stead_subject_packet (store, of, &id, error) || (packet = stead_packet_repo_get (store, id, error)) == NULL
      || (people = stead_packet_whose (store, packet, error)) == NULL)
    return FALSE;
  for (guint i = 0; i < people->len; i++)
    {
      const SteadEventPerson *person = people->pdata[i];

      add (self, names, person->person_id, person->name);
    }
  self->what = say_packet (packet);
  return TRUE;
}

static gboolean
of_week (SteadHandoutAnswer  *self,
         GPtrArray           *names,
         SteadStore          *store,
         SteadDay             from,
         SteadDay             to,
         GError             **error)
{
  g_autoptr(SteadHoursAnswer) answer = stead_hours_answer_new (store, from, to, 0, error);
  g_autofree char *day = stead_day_format (from, STEAD_DAY_STYLE_MEDIUM);

  for (guint i = 0; answer != NULL && i < answer->people->len; i++)
    {
      const SteadHoursPerson *person = answer->people->pdata[i];

      add (self, names, person->person_id, person->name);
    }
  self->what = g_strdup_printf (_("Hours of the week of %s"), day);
  return answer != NULL;
}

static gboolean
of_person (SteadHandoutAnswer  *self,
           GPtrArray           *names,
           SteadStore          *store,
           const char          *of,
           GError             **error)
{
  g_autoptr(SteadPerson) person = stead_subject_person (store, of, error);

  if (person == NULL)
    return FALSE;
  add (self, names, person->id, person->name);
  self->what = g_strdup_printf (_("Hours of %s"), person->name);
  return TRUE;
}

static char *
say (GPtrArray *names)
{
  g_autoptr(GString) list = g_string_new (NULL);
  g_autofree char *shown = NULL;

  if (names->len == 0)
    return NULL;
  for (guint i = 0; i < names->len; i++)
    g_string_append_printf (list, i == 0 ? "%s" : ", %s", (const char *) names->pdata[i]);
  shown = g_markup_escape_text (list->str, -1);
  /* Translators: one name, or several. */
  return g_strdup_printf (_("It tells of: <b>%s</b>"), shown);
}

gboolean
stead_handout_is_personal (const char *paper)
{
  const char * const personal[] = { "packet", "hours-week", "hours-person", NULL };

  g_return_val_if_fail (paper != NULL, FALSE);
  return g_strv_contains (personal, paper);
}

SteadHandoutAnswer *
stead_handout_answer_new (SteadStore  *store,
                          const char  *paper,
                          const char  *of,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  g_autoptr(SteadHandoutAnswer) self = g_new0 (SteadHandoutAnswer, 1);
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  gboolean ok;

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_handout_is_personal (paper), NULL);
  self->people = g_array_new (FALSE, FALSE, sizeof (gint64));
  if (g_str_equal (paper, "packet"))
    ok = of_packet (self, names, store, of, error);
  else if (g_str_equal (paper, "hours-week"))
    ok = of_week (self, names, store, from, to, error);
  else
    ok = of_person (self, names, store, of, error);
  if (!ok)
    return NULL;
  self->sentence = say (names);
  return g_steal_pointer (&self);
}
