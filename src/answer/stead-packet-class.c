/* stead-packet-class.c - "What leaves the farm with the packets of the whole class?" */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-answer.h"
#include "answer/stead-packet-class.h"
#include "answer/stead-words-private.h"

void
stead_packet_class_free (SteadPacketClass *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->people, g_array_unref);
  g_free (self->sentence);
  g_free (self);
}

static gboolean
has (const GArray *people,
     gint64        person_id)
{
  for (guint i = 0; i < people->len; i++)
    if (g_array_index (people, gint64, i) == person_id)
      return TRUE;
  return FALSE;
}

static gboolean
count_saved (SteadStore        *store,
             SteadPacketClass  *self,
             GError           **error)
{
  g_autoptr(GPtrArray) packets = stead_packet_repo_list (store, error);

  for (guint i = 0; packets != NULL && i < packets->len; i++)
    {
      const SteadPacket *packet = packets->pdata[i];

      self->n_packets++;
      self->n_pictures += packet->with_pictures;
      self->n_names += packet->with_names;
      if (packet->person_id != 0 && !has (self->people, packet->person_id))
        g_array_append_val (self->people, packet->person_id);
    }
  return packets != NULL;
}

/* A student without a packet gets the usual one, which names nobody else and has no pictures. */
static gboolean
count_usual (SteadStore        *store,
             SteadPacketClass  *self,
             GError           **error)
{
  g_autoptr(GPtrArray) people = stead_packet_people (store, error);

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->role != STEAD_PERSON_STUDENT || has (self->people, person->id))
        continue;
      self->n_packets++;
      g_array_append_val (self->people, person->id);
    }
  return people != NULL;
}

static char *
say (const SteadPacketClass *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *packets = NULL, *pictures = NULL, *names = NULL;

  packets = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                          "<b>%u packet</b> leaves the farm, with a name, hours, skills and thoughts.",
                                          "<b>%u packets</b> leave the farm, each with a name, hours, skills and thoughts.",
                                          self->n_packets), self->n_packets);
  stead_words_add (text, packets);
  if (self->n_pictures > 0)
    pictures = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u of them shows pictures.", "%u of them show pictures.",
                                             self->n_pictures), self->n_pictures);
  stead_words_add (text, self->n_pictures > 0 ? pictures : _("None of them shows pictures."));
  if (self->n_names > 0)
    names = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u of them names others who agreed to it.",
                                          "%u of them name others who agreed to it.", self->n_names), self->n_names);
  stead_words_add (text, self->n_names > 0 ? names : _("None of them names others."));
  return stead_words_end (text);
}

SteadPacketClass *
stead_packet_class_new (SteadStore  *store,
                        GError     **error)
{
  g_autoptr(SteadPacketClass) self = g_new0 (SteadPacketClass, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->people = g_array_new (FALSE, FALSE, sizeof (gint64));
  if (!count_saved (store, self, error) || !count_usual (store, self, error))
    return NULL;
  self->sentence = say (self);
  return g_steal_pointer (&self);
}
