/* stead-packet-answer.c - "What is to be shown of this student, or of this team?" */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-packet-private.h"

/* In the order of stead_packet_sections(). */
static const struct
{
  const char      *key;
  const char      *title;
  SteadPacketMake  make;
} sections[] = {
  { "cover", NC_("section of a packet", "Cover and contents"), stead_packet_make_cover },
  { "brief", NC_("section of a packet", "The work in brief"), stead_packet_make_brief },
  { "plan", NC_("section of a packet", "Plan and goals"), stead_packet_make_plan },
  { "hours", NC_("section of a packet", "Hours by activity"), stead_packet_make_hours },
  { "money", NC_("section of a packet", "Money in and out"), stead_packet_make_money },
  { "worth", NC_("section of a packet", "Stock and net worth"), stead_packet_make_worth },
  { "production", NC_("section of a packet", "Production results"), stead_packet_make_production },
  { "build", NC_("section of a packet", "Build record"), stead_packet_make_build },
  { "skills", NC_("section of a packet", "Skills"), stead_packet_make_skills },
  { "roles", NC_("section of a packet", "Roles and service"), stead_packet_make_roles },
  { "journal", NC_("section of a packet", "From the journal"), stead_packet_make_journal },
  { "own", NC_("section of a packet", "Sections of the event"), stead_packet_make_own },
  { "photos", NC_("section of a packet", "Pictures"), stead_packet_make_photos },
  { "corrections", NC_("section of a packet", "Corrections and late entries"), stead_packet_make_fixes },
  { "signatures", NC_("section of a packet", "Signatures"), stead_packet_make_signs },
  { "how", NC_("section of a packet", "How figures were made"), stead_packet_make_how },
};

const char *
stead_packet_section_title (const char *key)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sections); i++)
    if (g_strcmp0 (sections[i].key, key) == 0)
      return g_dpgettext2 (GETTEXT_PACKAGE, "section of a packet", sections[i].title);
  return key;
}

/* --- what is freed -------------------------------------------------------------------- */

static void
months_free (SteadPacketMonths *months)
{
  g_ptr_array_unref (months->names);
  g_array_unref (months->values);
  g_free (months);
}

static void
block_free (SteadPacketBlock *block)
{
  g_clear_pointer (&block->months, months_free);
  g_clear_pointer (&block->scores, stead_event_scores_free);
  g_free (block->text);
  stead_card_table_free (block->table);
  g_clear_pointer (&block->jpeg, g_bytes_unref);
  g_free (block);
}

static void
figure_free (SteadPacketFigure *figure)
{
  g_free (figure->text);
  g_ptr_array_unref (figure->entries);
  g_free (figure);
}

static void
part_free (SteadPacketPart *part)
{
  g_free (part->lack);
  g_ptr_array_unref (part->blocks);
  g_ptr_array_unref (part->figures);
  g_free (part);
}

void
stead_packet_answer_free (SteadPacketAnswer *self)
{
  if (self == NULL)
    return;
  stead_farm_free (self->farm);
  stead_packet_free (self->packet);
  stead_event_free (self->event);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_pointer (&self->parts, g_ptr_array_unref);
  g_clear_pointer (&self->whys, g_ptr_array_unref);
  g_free (self->whose);
  g_free (self->sentence);
  g_free (self);
}

/* --- the answer -------------------------------------------------------------------------- */

static SteadEventPerson *
find_person (SteadStore  *store,
             gint64       person_id,
             GError     **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      SteadEventPerson *found;

      if (person->id != person_id)
        continue;
      found = g_new0 (SteadEventPerson, 1);
      found->person_id = person->id;
      found->name = g_strdup (person->name);
      return found;
    }
  if (people != NULL)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no such person in the farm. Choose another."));
  return NULL;
}

GPtrArray *
stead_packet_whose (SteadStore         *store,
                    const SteadPacket  *packet,
                    GError            **error)
{
  GPtrArray *people;
  SteadEventPerson *person;

  g_return_val_if_fail (STEAD_IS_STORE (store) && packet != NULL, NULL);
  if (packet->person_id == 0)
    return stead_event_repo_team (store, packet->event_id, error);
  person = find_person (store, packet->person_id, error);
  if (person == NULL)
    return NULL;
  people = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_event_person_free);
  g_ptr_array_add (people, person);
  return people;
}

static gboolean
read_people (SteadStore         *store,
             SteadPacketAnswer  *self,
             GError            **error)
{
  g_autoptr(GString) whose = g_string_new (NULL);

  self->people = stead_packet_whose (store, self->packet, error);
  if (self->people == NULL)
    return FALSE;
  if (self->people->len == 0)
    {
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                           _("Nobody is in the team of the event yet. Put somebody in, then make the packet."));
      return FALSE;
    }
  for (guint i = 0; i < self->people->len; i++)
    g_string_append_printf (whose, i == 0 ? "%s" : ", %s", ((const SteadEventPerson *) self->people->pdata[i])->name);
  self->whose = g_string_free (g_steal_pointer (&whose), FALSE);
  return TRUE;
}

/* A section that this program does not know, in a file that another wrote, is left out. */
static gboolean
make_part (SteadPacketMaking  *making,
           const char         *key,
           GError            **error)
{
  SteadPacketPart *part;
  gsize i = 0;

  while (i < G_N_ELEMENTS (sections) && !g_str_equal (sections[i].key, key))
    i++;
  if (i == G_N_ELEMENTS (sections))
    return TRUE;
  part = g_new0 (SteadPacketPart, 1);
  part->key = sections[i].key;
  part->title = stead_packet_section_title (key);
  part->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) block_free);
  part->figures = g_ptr_array_new_with_free_func ((GDestroyNotify) figure_free);
  g_ptr_array_add (making->answer->parts, part);
  making->part = part;
  if (!sections[i].make (making, error))
    {
      g_clear_error (&making->problem);
      return FALSE;
    }
  if (making->problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&making->problem));
      return FALSE;
    }
  making->answer->n_blank += part->is_blank;
  return TRUE;
}

static char *
say (const SteadPacketAnswer *self)
{
  g_autofree char *whose = g_markup_escape_text (self->whose, -1);

  if (self->n_blank == 0)
    /* Translators: a name, or the names of a team. */
    return g_strdup_printf (_("The packet of <b>%s</b> has something in each of its sections."), whose);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "In the packet of <b>%2$s</b> nothing is recorded for %1$d section.",
                                       "In the packet of <b>%2$s</b> nothing is recorded for %1$d sections.",
                                       (gulong) self->n_blank), self->n_blank, whose);
}

static SteadPacketAnswer *
make (SteadStore         *store,
      SteadPacketAnswer  *self,
      SteadPacketSource  *source,
      GError            **error)
{
  SteadPacketMaking making = { store, source, self, NULL, NULL };

  self->parts = g_ptr_array_new_with_free_func ((GDestroyNotify) part_free);
  self->whys = stead_whys_new ();
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return NULL;
  if (self->packet->event_id != 0 && (self->event = stead_event_repo_get (store, self->packet->event_id, error)) == NULL)
    return NULL;
  if (!read_people (store, self, error))
    return NULL;
  for (guint i = 0; i < self->packet->sections->len; i++)
    if (!make_part (&making, self->packet->sections->pdata[i], error))
      return NULL;
  self->sentence = say (self);
  return self;
}

static SteadPacketAnswer *
answer_of (SteadStore         *store,
           SteadPacket        *packet,
           SteadPacketSource  *source,
           GError            **error)
{
  g_autoptr(SteadPacketSource) own = source == NULL ? stead_packet_source_new () : NULL;
  g_autoptr(SteadPacketAnswer) self = g_new0 (SteadPacketAnswer, 1);

  self->packet = packet;
  if (make (store, self, source != NULL ? source : own, error) == NULL)
    return NULL;
  return g_steal_pointer (&self);
}

SteadPacketAnswer *
stead_packet_answer_new (SteadStore         *store,
                         gint64              packet_id,
                         SteadPacketSource  *source,
                         GError            **error)
{
  SteadPacket *packet;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  packet = stead_packet_repo_get (store, packet_id, error);
  return packet == NULL ? NULL : answer_of (store, packet, source, error);
}

SteadPacketAnswer *
stead_packet_answer_of (SteadStore         *store,
                        const SteadPacket  *packet,
                        SteadPacketSource  *source,
                        GError            **error)
{
  SteadPacket *copy;

  g_return_val_if_fail (STEAD_IS_STORE (store) && packet != NULL, NULL);
  copy = stead_packet_new ();
  g_ptr_array_unref (copy->sections);
  *copy = *packet;
  copy->name = g_strdup (packet->name);
  copy->brief = g_strdup (packet->brief);
  copy->sections = g_ptr_array_copy (packet->sections, (GCopyFunc) (void (*) (void)) g_strdup, NULL);
  g_ptr_array_set_free_func (copy->sections, g_free);
  return answer_of (store, copy, source, error);
}

SteadPacket *
stead_packet_usual (SteadStore  *store,
                    SteadDay     day,
                    GError     **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  SteadPacket *packet;

  if (farm == NULL)
    return NULL;
  packet = stead_packet_new ();
  packet->from_on = stead_school_year_start (day, farm->school_year_month, farm->school_year_mday);
  packet->to_on = day;
  for (const char * const *key = stead_packet_sections (); *key != NULL; key++)
    g_ptr_array_add (packet->sections, g_strdup (*key));
  return packet;
}

GPtrArray *
stead_packet_people (SteadStore  *store,
                     GError     **error)
{
  GPtrArray *people = stead_person_repo_list (store, error);

  for (guint i = people != NULL ? people->len : 0; i > 0; i--)
    {
      const SteadPerson *person = people->pdata[i - 1];

      if (person->left_on != STEAD_DAY_NONE && person->left_on <= stead_store_get_today (store))
        g_ptr_array_remove_index (people, i - 1);
    }
  return people;
}

static gboolean
is_called (const char *name,
           const char *wanted)
{
  g_autofree char *bare = g_strstrip (g_strdup (wanted));
  g_autofree char *one = g_utf8_casefold (bare, -1);
  g_autofree char *two = g_utf8_casefold (name, -1);

  return g_str_equal (one, two);
}

gboolean
stead_subject_packet (SteadStore  *store,
                      const char  *name,
                      gint64      *out_id,
                      GError     **error)
{
  g_autoptr(GPtrArray) packets = stead_packet_repo_list (store, error);
  g_autoptr(GString) names = g_string_new (NULL);

  g_return_val_if_fail (out_id != NULL, FALSE);
  if (packets == NULL)
    return FALSE;
  for (guint i = 0; i < packets->len; i++)
    {
      const SteadPacket *packet = packets->pdata[i];

      g_string_append_printf (names, i == 0 ? "%s" : ", %s", packet->name);
      if (name != NULL && !is_called (packet->name, name))
        continue;
      *out_id = packet->id;
      return TRUE;
    }
  if (packets->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no packet yet. Make one in Show."));
  else
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                 _("No packet is called “%s”. There is: %s."), name, names->str);
  return FALSE;
}
