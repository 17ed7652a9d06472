/* stead-event-answer.c - "How far is the team, and what does the packet still lack?"
 *
 * What kinds of events look at is told in general words, after public guides of several
 * states: farm business management reads and builds statements and gives reasons for a
 * choice; a marketing plan has product and client, market, competitors, strategy, budget and
 * measures; sales has product facts, need, objections, order and after-care; food science
 * has product development, safety and sensory tests; poultry has placings with reasons.
 * The material is common practice, no source.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-event-answer.h"
#include "core/stead-hours.h"

#define WORDS(...) (const char * const []) { __VA_ARGS__, NULL }

static const SteadEventKind kinds[] = {
  { "business", NC_("kind of event", "Farm business management"), "cover brief money worth how",
    WORDS (NC_("need of an event", "A choice that the farm made, with reasons")),
    WORDS (NC_("need of an event", "Calculator")) },
  { "marketing", NC_("kind of event", "Marketing plan"), "cover brief money how",
    WORDS (NC_("need of an event", "The product and the client"), NC_("need of an event", "The market and where it goes"),
           NC_("need of an event", "Competitors, their strengths and weaknesses"),
           NC_("need of an event", "Strategy and budget"), NC_("need of an event", "How success is measured")),
    WORDS (NC_("need of an event", "Slides or posters")) },
  { "sales", NC_("kind of event", "Sales"), "cover brief",
    WORDS (NC_("need of an event", "Facts about the product"), NC_("need of an event", "What the customer needs"),
           NC_("need of an event", "Objections, and what to say"),
           NC_("need of an event", "Asking for the order, and care afterward")),
    WORDS (NC_("need of an event", "The product, to show")) },
  { "food-science", NC_("kind of event", "Food science"), "cover brief production skills",
    WORDS (NC_("need of an event", "The product that the team developed"), NC_("need of an event", "Sensory test")),
    WORDS (NC_("need of an event", "Clean apron and hair covering")) },
  { "poultry", NC_("kind of event", "Poultry evaluation"), "cover brief production skills",
    WORDS (NC_("need of an event", "Reasons for a placing")),
    WORDS (NC_("need of an event", "White coat"), NC_("need of an event", "Clipboard and pencils")) },
  { "mechanics", NC_("kind of event", "Agricultural mechanics"), "cover brief build skills",
    WORDS (NC_("need of an event", "What was built, and how it was tested")),
    WORDS (NC_("need of an event", "Safety glasses"), NC_("need of an event", "Work boots")) },
  { "records", NC_("kind of event", "Records"),
    "cover brief plan hours money worth production skills roles journal corrections signatures how", NULL, NULL },
};

const SteadEventKind *
stead_event_kinds (gsize *n_kinds)
{
  *n_kinds = G_N_ELEMENTS (kinds);
  return kinds;
}

const char *
stead_event_kind_name (const char *kind)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (kinds[i].key, kind) == 0)
      return g_dpgettext2 (GETTEXT_PACKAGE, "kind of event", kinds[i].name);
  return kind;
}

static gboolean
add_need (SteadStore     *store,
          gint64          event_id,
          SteadNeedKind   what,
          const char     *words,
          GError        **error)
{
  SteadEventNeed need = { .event_id = event_id, .what = what, .words = (char *) words, .done_on = STEAD_DAY_NONE };

  return stead_event_repo_save_need (store, &need, error);
}

static gboolean
add_needs (SteadStore          *store,
           gint64               event_id,
           SteadNeedKind        what,
           const char * const  *words,
           GError             **error)
{
  for (; words != NULL && *words != NULL; words++)
    if (!add_need (store, event_id, what, g_dpgettext2 (GETTEXT_PACKAGE, "need of an event", *words), error))
      return FALSE;
  return TRUE;
}

gboolean
stead_event_fill_needs (SteadStore  *store,
                        gint64       event_id,
                        const char  *kind,
                        GError     **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_auto(GStrv) keys = NULL;

      if (g_strcmp0 (kinds[i].key, kind) != 0)
        continue;
      keys = g_strsplit (kinds[i].sections, " ", -1);
      for (char **key = keys; *key != NULL; key++)
        if (!add_need (store, event_id, STEAD_NEED_SECTION, *key, error))
          return FALSE;
      return add_needs (store, event_id, STEAD_NEED_OWN, kinds[i].own, error) &&
             add_needs (store, event_id, STEAD_NEED_MATERIAL, kinds[i].material, error);
    }
  return TRUE;
}

/* --- the checklist -------------------------------------------------------------------- */

static void
item_free (SteadEventItem *item)
{
  g_free (item->text);
  g_free (item->lack);
  g_free (item);
}

void
stead_event_answer_free (SteadEventAnswer *self)
{
  if (self == NULL)
    return;
  stead_farm_free (self->farm);
  stead_event_free (self->event);
  g_clear_pointer (&self->team, g_ptr_array_unref);
  g_clear_pointer (&self->minutes, g_array_unref);
  g_clear_pointer (&self->needs, g_ptr_array_unref);
  g_clear_pointer (&self->scores, g_ptr_array_unref);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->when);
  stead_event_scores_free (self->lines);
  g_free (self);
}

/* @lack: what to do, copied if it is not done */
static SteadEventItem *
add_item (SteadEventAnswer *self,
          const char       *text,
          gboolean          is_done,
          const char       *lack,
          SteadTarget       target,
          gint64            target_id)
{
  SteadEventItem *item = g_new0 (SteadEventItem, 1);

  item->text = g_strdup (text);
  item->is_done = is_done;
  item->lack = is_done ? NULL : g_strdup (lack);
  item->target = is_done ? STEAD_TARGET_NONE : target;
  item->target_id = target_id;
  g_ptr_array_add (self->items, item);
  self->n_lacking += !is_done;
  return item;
}

static const SteadPacketPart *
part_of (const SteadPacketAnswer *packet,
         const char              *key)
{
  for (guint i = 0; packet != NULL && i < packet->parts->len; i++)
    if (g_strcmp0 (((const SteadPacketPart *) packet->parts->pdata[i])->key, key) == 0)
      return packet->parts->pdata[i];
  return NULL;
}

static void
add_section (SteadEventAnswer        *self,
             const SteadEventNeed    *need,
             const SteadPacketAnswer *packet)
{
  const SteadPacketPart *part = part_of (packet, need->words);
  /* Translators: %s is a section of a packet: "Hours by activity". */
  g_autofree char *text = g_strdup_printf (_("Section: %s"), stead_packet_section_title (need->words));

  if (packet == NULL)
    add_item (self, text, FALSE, _("Make the packet first."), STEAD_TARGET_NONE, 0)->need_id = need->id;
  else if (part == NULL)
    add_item (self, text, FALSE, _("Put the section into the packet."), STEAD_TARGET_PACKET,
              self->packet_id)->need_id = need->id;
  else
    add_item (self, text, !part->is_blank, part->lack, part->target != STEAD_TARGET_NONE ? part->target
              : STEAD_TARGET_PACKET, part->target != STEAD_TARGET_NONE ? part->target_id
              : self->packet_id)->need_id = need->id;
}

static void
add_need_item (SteadEventAnswer        *self,
               const SteadEventNeed    *need,
               const SteadPacketAnswer *packet)
{
  g_autofree char *text = NULL;

  if (need->what == STEAD_NEED_SECTION)
    {
      add_section (self, need, packet);
      return;
    }
  if (need->what == STEAD_NEED_OWN)
    {
      add_item (self, need->words, need->text != NULL, _("Write this section."), STEAD_TARGET_NONE, 0)->need_id = need->id;
      return;
    }
  /* Translators: %s is something to bring to an event. */
  text = g_strdup_printf (_("To bring: %s"), need->words);
  add_item (self, text, need->done_on != STEAD_DAY_NONE, _("Mark it once it is ready."), STEAD_TARGET_NONE,
            0)->need_id = need->id;
}

/* What is lacking comes first; else in the order of the list. */
static int
compare_items (gconstpointer a,
               gconstpointer b)
{
  return (*(SteadEventItem * const *) a)->is_done - (*(SteadEventItem * const *) b)->is_done;
}

static void
check (SteadEventAnswer        *self,
       const SteadPacketAnswer *packet,
       SteadDay                 today)
{
  add_item (self, _("The team"), self->team->len > 0, _("Choose who takes part."), STEAD_TARGET_NONE, 0);
  add_item (self, _("The packet"), self->packet_id != 0, _("Make the packet."), STEAD_TARGET_NONE, 0);
  for (guint i = 0; i < self->needs->len; i++)
    add_need_item (self, self->needs->pdata[i], packet);
  add_item (self, _("Preparation hours"), self->prepared_minutes > 0, _("Enter hours that belong to this event."),
            STEAD_TARGET_HOURS, self->team->len > 0 ? ((const SteadEventPerson *) self->team->pdata[0])->person_id : 0);
  add_item (self, _("A practice score"), self->scores->len > 0, _("Enter how a practice went."), STEAD_TARGET_NONE, 0);
  if (self->event->day >= today)
    return;
  add_item (self, _("The result"), self->event->result != NULL, _("Enter how it went."), STEAD_TARGET_NONE, 0);
  add_item (self, _("What was learned"), self->event->learned != NULL, _("Write it in the team's own words."),
            STEAD_TARGET_NONE, 0);
}

/* --- the answer --------------------------------------------------------------------------- */

static gboolean
find_packet (SteadStore        *store,
             SteadEventAnswer  *self,
             GError           **error)
{
  g_autoptr(GPtrArray) packets = stead_packet_repo_list (store, error);

  for (guint i = 0; packets != NULL && i < packets->len && self->packet_id == 0; i++)
    if (((const SteadPacket *) packets->pdata[i])->event_id == self->event->id)
      self->packet_id = ((const SteadPacket *) packets->pdata[i])->id;
  return packets != NULL;
}

static gboolean
read_minutes (SteadStore        *store,
              SteadEventAnswer  *self,
              GError           **error)
{
  for (guint i = 0; i < self->team->len; i++)
    {
      double minutes;

      if (!stead_event_repo_minutes (store, self->event->id, ((SteadEventPerson *) self->team->pdata[i])->person_id,
                                     &minutes, error))
        return FALSE;
      g_array_append_val (self->minutes, minutes);
    }
  return stead_event_repo_minutes (store, self->event->id, 0, &self->prepared_minutes, error);
}

/* In the morning what is lacking still counts; how it went is asked from the next day on. */
static char *
say_today (const SteadEventAnswer *self,
           const char             *name,
           const char             *hours)
{
  if (self->n_lacking == 0)
    /* Translators: an event; "12:30" hours. */
    return g_strdup_printf (_("<b>All is there</b> for %1$s today; %2$s h prepared."), name, hours);
  /* Translators: how many things; an event; "12:30" hours. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%1$d thing is lacking</b> for %2$s today; %3$s h prepared.",
                                       "<b>%1$d things are lacking</b> for %2$s today; %3$s h prepared.",
                                       (gulong) self->n_lacking), self->n_lacking, name, hours);
}

static char *
say (const SteadEventAnswer *self,
     SteadDay                today)
{
  g_autofree char *name = g_markup_escape_text (self->event->name, -1);
  g_autofree char *hours = stead_hours_format ((gint64) (self->prepared_minutes + 0.5));
  g_autofree char *day = stead_day_format (self->event->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *days = stead_words_days (self->event->day - today);

  if (self->event->day == today && self->event->result == NULL)
    return say_today (self, name, hours);
  if (self->event->day > today && self->n_lacking > 0)
    /* Translators: how many things; an event; "9 days"; "12:30" hours. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%1$d thing is lacking</b> for %2$s in %3$s; %4$s h prepared.",
                                         "<b>%1$d things are lacking</b> for %2$s in %3$s; %4$s h prepared.",
                                         (gulong) self->n_lacking), self->n_lacking, name, days, hours);
  if (self->event->day > today)
    return g_strdup_printf (_("<b>All is there</b> for %1$s in %2$s; %3$s h prepared."), name, days, hours);
  if (self->event->result != NULL)
    {
      g_autofree char *result = g_markup_escape_text (self->event->result, -1);

      /* Translators: an event, its day, its result, "12:30" hours. */
      return g_strdup_printf (_("%1$s on %2$s: <b>%3$s</b>, after %4$s h of preparation."), name, day, result, hours);
    }
  return g_strdup_printf (_("%1$s was on %2$s. Enter how it went."), name, day);
}

static char *
say_when (const SteadEvent *event,
          SteadDay          today)
{
  g_autofree char *day = stead_day_format (event->day, event->day >= today ? STEAD_DAY_STYLE_LONG : STEAD_DAY_STYLE_MEDIUM);

  if (event->place == NULL)
    return g_steal_pointer (&day);
  /* Translators: a day, a place. */
  return g_strdup_printf (_("%1$s, %2$s"), day, event->place);
}

SteadEventAnswer *
stead_event_answer_new (SteadStore  *store,
                        gint64       event_id,
                        GError     **error)
{
  g_autoptr(SteadEventAnswer) self = g_new0 (SteadEventAnswer, 1);
  g_autoptr(SteadPacketAnswer) packet = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  today = stead_store_get_today (store);
  self->items = g_ptr_array_new_with_free_func ((GDestroyNotify) item_free);
  self->minutes = g_array_new (FALSE, FALSE, sizeof (double));
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL || (self->event = stead_event_repo_get (store, event_id, error)) == NULL
      || (self->team = stead_event_repo_team (store, event_id, error)) == NULL
      || (self->needs = stead_event_repo_needs (store, event_id, error)) == NULL
      || (self->scores = stead_event_repo_scores (store, event_id, error)) == NULL
      || !find_packet (store, self, error) || !read_minutes (store, self, error))
    return NULL;
  if (self->packet_id != 0 && self->team->len > 0
      && (packet = stead_packet_answer_new (store, self->packet_id, NULL, error)) == NULL)
    return NULL;
  self->lines = stead_event_scores_new (self->scores, self->event->day);
  check (self, packet, today);
  g_ptr_array_sort (self->items, compare_items);
  self->sentence = say (self, today);
  self->when = say_when (self->event, today);
  return g_steal_pointer (&self);
}
