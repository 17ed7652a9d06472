/* stead-line-reader.c - what the one-line entry knows of the farm, what it
 * offers, what it understood, and how that is recorded.
 */
#include "config.h"

#include "answer/stead-flock-answer.h"
#include "answer/stead-line-answer.h"
#include "answer/stead-line-private.h"
#include "answer/stead-words-private.h"
#include "store/stead-lot-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MAX_OFFERS 8

void
stead_line_reader_free (SteadLineReader *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->flocks, g_ptr_array_unref);
  g_clear_pointer (&self->alive, g_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_free (self);
}

static gboolean
read_alive (SteadStore       *store,
            SteadLineReader  *self,
            GError          **error)
{
  self->alive = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (guint i = 0; i < self->flocks->len; i++)
    {
      const SteadFlock *flock = self->flocks->pdata[i];
      gint64 alive = stead_flock_repo_alive (store, flock->id, self->read_on, error);

      if (alive < 0)
        return FALSE;
      g_array_append_val (self->alive, alive);
    }
  return TRUE;
}

static void
drop_gone (GPtrArray *people,
           SteadDay   today)
{
  for (guint i = people->len; i > 0; i--)
    {
      const SteadPerson *person = people->pdata[i - 1];

      if (person->left_on != STEAD_DAY_NONE && person->left_on <= today)
        g_ptr_array_remove_index (people, i - 1);
    }
}

SteadLineReader *
stead_line_reader_new (SteadStore  *store,
                       GError     **error)
{
  g_autoptr(SteadLineReader) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = g_new0 (SteadLineReader, 1);
  self->read_on = stead_store_get_today (store);
  if ((self->farm = stead_farm_repo_get (store, error)) == NULL
      || (self->flocks = stead_flock_repo_list (store, FALSE, error)) == NULL
      || (self->people = stead_person_repo_list (store, error)) == NULL
      || (self->items = stead_item_repo_list (store, error)) == NULL
      || !read_alive (store, self, error))
    return NULL;
  drop_gone (self->people, self->read_on);
  return g_steal_pointer (&self);
}

static const SteadFlock *
flock_by_id (const SteadLineReader *self,
             gint64                 id)
{
  for (guint i = 0; i < self->flocks->len; i++)
    if (((const SteadFlock *) self->flocks->pdata[i])->id == id)
      return self->flocks->pdata[i];
  return NULL;
}

static const SteadItem *
item_by_id (const SteadLineReader *self,
            gint64                 id)
{
  for (guint i = 0; i < self->items->len; i++)
    if (((const SteadItem *) self->items->pdata[i])->id == id)
      return self->items->pdata[i];
  return NULL;
}

static char *
day_text (SteadDay day,
          SteadDay today)
{
  if (day == today)
    return g_strdup (_("today"));
  if (day == today - 1)
    return g_strdup (_("yesterday"));
  return stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
eggs_text (const SteadFlockEntry *entry)
{
  g_autofree char *eggs = stead_words_eggs (entry->eggs);

  if (entry->cracked == 0)
    return g_steal_pointer (&eggs);
  /* Translators: "22 eggs", then how many of them. */
  return g_strdup_printf (_("%s, %d of them cracked"), eggs, entry->cracked);
}

/* The parts of "22 eggs, 6.8 lb feed, by Ana", each in its own words. */
static GPtrArray *
parts_of (const SteadLineReader  *self,
          const SteadLineReading *reading)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func (g_free);
  const SteadFlockEntry *entry = &reading->entry;
  const SteadItem *item = item_by_id (self, reading->use_item_id);

  if (entry->eggs != STEAD_COUNT_NONE)
    g_ptr_array_add (parts, eggs_text (entry));
  if (!isnan (entry->feed_kg))
    {
      const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);
      g_autofree char *feed = stead_quantity_format (entry->feed_kg, unit);

      g_ptr_array_add (parts, g_strdup_printf (_("%s of feed"), feed));
    }
  if (item != NULL)
    {
      g_autofree char *amount = stead_quantity_format (reading->use_base, item->unit);

      /* Translators: a thing of the store room and how much of it. */
      g_ptr_array_add (parts, g_strdup_printf (_("%s used: %s"), item->name, amount));
    }
  if (entry->deaths > 0)
    {
      g_autofree char *hens = stead_words_hens (entry->deaths);

      g_ptr_array_add (parts, g_strdup_printf (_("%s found dead"), hens));
    }
  if (entry->culled > 0)
    {
      g_autofree char *hens = stead_words_hens (entry->culled);

      g_ptr_array_add (parts, g_strdup_printf (_("%s taken out"), hens));
    }
  for (guint i = 0; entry->person_id != 0 && i < self->people->len; i++)
    {
      const SteadPerson *person = self->people->pdata[i];

      if (person->id == entry->person_id)
        g_ptr_array_add (parts, g_strdup_printf (_("by %s"), person->name));
    }
  if (entry->note != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_("note “%s”"), entry->note));
  return parts;
}

char *
stead_line_understood (const SteadLineReader  *self,
                       const SteadLineReading *reading,
                       SteadDay                today)
{
  g_autoptr(GPtrArray) parts = parts_of (self, reading);
  g_autofree char *day = day_text (reading->entry.day, today);
  g_autofree char *list = NULL;

  g_ptr_array_add (parts, NULL);
  list = g_strjoinv ("; ", (char **) parts->pdata);
  /* Translators: a flock, a day, and what happened: "Brown hens, today: 22 eggs; 6.8 lb of feed." */
  return g_markup_printf_escaped (_("%s, <b>%s</b>: %s."),
                                  flock_by_id (self, reading->entry.flock_id)->name, day, list);
}

/* --- what the typed line could become ------------------------------------- */

typedef struct
{
  GPtrArray  *offers;   /* of char * */
  const char *kept;     /* the line up to the word that is being typed */
  char       *typed;    /* that word, folded */
} Offer;

static void
offer (Offer      *self,
       const char *word,
       const char *after)
{
  g_autofree char *folded = stead_line_fold (word);

  if (self->offers->len < MAX_OFFERS && g_str_has_prefix (folded, self->typed)
      && strlen (folded) > strlen (self->typed))
    g_ptr_array_add (self->offers, g_strconcat (self->kept, word, after, NULL));
}

static void
offer_names (Offer      *self,
             GPtrArray  *facts,
             gsize       name_offset,
             const char *after)
{
  for (guint i = 0; i < facts->len; i++)
    offer (self, G_STRUCT_MEMBER (char *, facts->pdata[i], name_offset), after);
}

/* Whether the line has this amount already. */
static gboolean
has_word (GArray    *tokens,
          SteadWord  word)
{
  for (guint i = 0; i < tokens->len; i++)
    {
      const SteadToken *token = &g_array_index (tokens, SteadToken, i);

      if (token->kind == STEAD_TOKEN_WORD && stead_line_word (token->folded) == word)
        return TRUE;
    }
  return FALSE;
}

/* After a number: what it may count, likely things first. */
static void
offer_kinds (Offer                 *self,
             const SteadLineReader *reader,
             GArray                *tokens)
{
  static const SteadWord kinds[] = { STEAD_WORD_EGGS, STEAD_WORD_CRACKED, STEAD_WORD_FEED, STEAD_WORD_DEAD,
                                     STEAD_WORD_CULLED };
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, reader->farm->units);

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      const char *word = stead_line_word_offered (kinds[i]);
      g_autofree char *feed = g_strdup_printf ("%s %s", stead_unit_symbol (unit), word);

      if (has_word (tokens, kinds[i]))
        continue;
      offer (self, kinds[i] == STEAD_WORD_FEED ? feed : word, "");
      if (kinds[i] == STEAD_WORD_FEED && *self->typed != '\0')
        offer (self, word, "");
    }
  offer_names (self, reader->items, G_STRUCT_OFFSET (SteadItem, name), "");
}

/* After an amount: who, when. */
static void
offer_rest (Offer *self)
{
  offer (self, _("yesterday"), "");
  offer (self, stead_line_word_offered (STEAD_WORD_BY), " ");
  offer (self, stead_line_word_offered (STEAD_WORD_NOTE), ": ");
}

/* The token that is still being typed: the last one, if the line ends in it. */
static const SteadToken *
open_token (GArray     *tokens,
            const char *line)
{
  const SteadToken *last = tokens->len > 0 ? &g_array_index (tokens, SteadToken, tokens->len - 1) : NULL;

  return last != NULL && last->kind == STEAD_TOKEN_WORD && last->end == (int) strlen (line) ? last : NULL;
}

static void
offer_all (Offer                 *self,
           const SteadLineReader *reader,
           GArray                *tokens,
           guint                  n_before)
{
  const SteadToken *before = n_before > 0 ? &g_array_index (tokens, SteadToken, n_before - 1) : NULL;
  SteadWord word = before != NULL && before->kind == STEAD_TOKEN_WORD ? stead_line_word (before->folded)
                                                                      : STEAD_WORD_NONE;

  if (before == NULL)
    offer_names (self, reader->flocks, G_STRUCT_OFFSET (SteadFlock, name), ": ");
  else if (before->kind == STEAD_TOKEN_NUMBER)
    offer_kinds (self, reader, tokens);
  else if (word == STEAD_WORD_BY)
    offer_names (self, reader->people, G_STRUCT_OFFSET (SteadPerson, name), "");
  else
    offer_rest (self);
  /* "Hens 2" has two words; its first number is not a count. */
  if (before != NULL && n_before == 1)
    offer_names (self, reader->flocks, G_STRUCT_OFFSET (SteadFlock, name), ": ");
}

char **
stead_line_reader_complete (SteadLineReader *self,
                            const char      *line)
{
  g_autoptr(GPtrArray) offers = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GArray) tokens = NULL;
  const SteadToken *open;
  g_autofree char *kept = NULL;
  g_autofree char *typed = NULL;
  Offer state;

  g_return_val_if_fail (self != NULL && line != NULL, NULL);

  if (g_utf8_validate (line, -1, NULL))
    {
      tokens = stead_line_tokens (line, 0, (int) strlen (line));
      open = open_token (tokens, line);
      kept = g_strndup (line, open != NULL ? (gsize) open->start : strlen (line));
      typed = stead_line_fold (open != NULL ? line + open->start : "");
      state = (Offer) { offers, kept, typed };
      if (open != NULL || *kept == '\0' || g_str_has_suffix (kept, " "))
        offer_all (&state, self, tokens, tokens->len - (open != NULL ? 1 : 0));
    }
  g_ptr_array_add (offers, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&offers), FALSE);
}

/* --- recording ------------------------------------------------------------ */

/* The step's name for the undo menu. */
static char *
step_name (const SteadLineReading *reading,
           SteadStore             *store,
           GError                **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(SteadItem) item = NULL;
  g_autofree char *amount = NULL;
  g_autofree char *day = NULL;

  if (farm == NULL)
    return NULL;
  if (stead_line_has_entry (reading))
    return stead_flock_answer_entry_name (&reading->entry, farm);
  item = stead_item_repo_get (store, reading->use_item_id, error);
  if (item == NULL)
    return NULL;
  amount = stead_quantity_format (reading->use_base, item->unit);
  day = stead_day_format (reading->entry.day, STEAD_DAY_STYLE_SHORT);
  /* Translators: a thing of the store room, how much, a day. */
  return g_strdup_printf (_("%s, %s, on %s"), item->name, amount, day);
}

static gboolean
write_reading (const SteadLineReading  *reading,
               SteadStore              *store,
               GError                 **error)
{
  SteadFlockEntry entry = reading->entry;
  gboolean saved = TRUE;

  if (stead_line_has_entry (reading))
    {
      entry.note = g_strdup (reading->entry.note);
      saved = stead_flock_repo_save_entry (store, &entry, error);
      stead_flock_entry_clear (&entry);
    }
  if (saved && reading->use_item_id != 0)
    saved = stead_lot_repo_use (store, reading->use_item_id, reading->entry.flock_id, reading->entry.day,
                                reading->use_base, reading->entry.person_id, error);
  return saved;
}

gboolean
stead_line_reading_record (const SteadLineReading  *reading,
                           SteadStore              *store,
                           GError                 **error)
{
  g_autofree char *name = NULL;

  g_return_val_if_fail (reading != NULL && reading->complete, FALSE);
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);

  name = step_name (reading, store, error);
  if (name == NULL || !stead_store_begin (store, name, error))
    return FALSE;
  if (!write_reading (reading, store, error))
    {
      stead_store_rollback (store);
      return FALSE;
    }
  return stead_store_commit (store, error);
}
