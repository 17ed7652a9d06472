/* stead-line-answer.c - reads "Hens: 22 eggs, 1 cracked, 6.8 lb feed".
 *
 * The line is cut into tokens, and phrases are taken from the left: a day, a
 * person, an amount with its word before or after it, a flock's name.  The
 * first token that fits nowhere is told with its place; nothing is guessed.
 */
#include "config.h"

#include "answer/stead-line-answer.h"
#include "answer/stead-line-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MAX_COUNT 1e6
#define NAME_WORDS 3

/* One reading under way. */
typedef struct
{
  const SteadLineReader *self;
  const char            *line;
  GArray                *tokens;
  guint                  at;
  SteadDay               today;
  const SteadFlock      *flock;     /* named in the line, or the only one */
  gboolean               has_cracked;
  gboolean               has_day;
  SteadLineReading      *reading;
} Parse;

/* An amount as it stands in the line. */
typedef struct
{
  char            *text;
  int              start;
  int              end;
  const SteadUnit *unit;   /* first unit named; NULL: a bare number */
} Measure;

static void
measure_clear (Measure *measure)
{
  g_free (measure->text);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Measure, measure_clear)

void
stead_line_reading_free (SteadLineReading *reading)
{
  if (reading == NULL)
    return;
  stead_flock_entry_clear (&reading->entry);
  g_free (reading->understood);
  g_free (reading);
}

/* Takes @message over.  The first fault counts. */
static gboolean
fail (Parse *parse,
      int    start,
      int    end,
      char  *message)
{
  if (parse->reading->understood != NULL)
    {
      g_free (message);
      return FALSE;
    }
  parse->reading->understood = message;
  parse->reading->error_start = start;
  parse->reading->error_end = end;
  return FALSE;
}

/* A message of the layer below, at its place. */
static gboolean
fail_with (Parse        *parse,
           int           start,
           int           end,
           const GError *error)
{
  return fail (parse, start, end, g_markup_escape_text (error->message, -1));
}

static const SteadToken *
token_at (const Parse *parse,
          guint        at)
{
  return at < parse->tokens->len ? &g_array_index (parse->tokens, SteadToken, at) : NULL;
}

static char *
text_of (const Parse *parse,
         int          start,
         int          end)
{
  return g_strndup (parse->line + start, (gsize) (end - start));
}

static SteadWord
word_at (const Parse *parse,
         guint        at)
{
  const SteadToken *token = token_at (parse, at);

  return token != NULL && token->kind == STEAD_TOKEN_WORD ? stead_line_word (token->folded) : STEAD_WORD_NONE;
}

static gboolean
is_number (const SteadToken *token)
{
  return token != NULL && token->kind == STEAD_TOKEN_NUMBER;
}

static const SteadUnit *
unit_at (const Parse *parse,
         guint        at)
{
  const SteadToken *token = token_at (parse, at);
  g_autofree char *text = NULL;

  if (token == NULL || token->kind != STEAD_TOKEN_WORD || word_at (parse, at) != STEAD_WORD_NONE)
    return NULL;
  text = text_of (parse, token->start, token->end);
  return stead_unit_from_text (text);
}

static gboolean
is_fraction (const Parse      *parse,
             const SteadToken *token)
{
  return is_number (token) && memchr (parse->line + token->start, '/', (gsize) (token->end - token->start)) != NULL;
}

static void
skip_fillers (Parse *parse)
{
  while (word_at (parse, parse->at) == STEAD_WORD_FILLER)
    parse->at++;
}

/* "6.8 lb", "2 lb 4 oz", "1 1/2 cups", "22": from the number at the cursor on. */
static void
take_measure (Parse   *parse,
              Measure *measure)
{
  const SteadToken *token = token_at (parse, parse->at);
  const SteadUnit *unit;

  measure->start = token->start;
  measure->end = token->end;
  parse->at++;
  if (!is_fraction (parse, token) && is_fraction (parse, token_at (parse, parse->at)))
    measure->end = token_at (parse, parse->at++)->end;
  while ((unit = unit_at (parse, parse->at)) != NULL)
    {
      if (measure->unit == NULL)
        measure->unit = unit;
      measure->end = token_at (parse, parse->at++)->end;
      if (!is_number (token_at (parse, parse->at)) || unit_at (parse, parse->at + 1) == NULL)
        break;
      measure->end = token_at (parse, parse->at++)->end;
    }
  measure->text = text_of (parse, measure->start, measure->end);
}

/* Eggs, hens: pieces, and whole ones. */
static gboolean
read_count (Parse         *parse,
            const Measure *measure,
            gint32        *out)
{
  g_autoptr(GError) error = NULL;
  double value;

  if (!stead_quantity_parse (measure->text, STEAD_DIMENSION_COUNT, stead_unit_by_id ("ea"), &value, NULL, &error))
    return fail_with (parse, measure->start, measure->end, error);
  if (fabs (value - round (value)) > 1e-9)
    return fail (parse, measure->start, measure->end,
                 g_markup_printf_escaped (_("“%s” is not a whole number. Eggs and hens are counted whole."),
                                          measure->text));
  if (value > MAX_COUNT)
    return fail (parse, measure->start, measure->end,
                 g_markup_printf_escaped (_("“%s” is too large. Check how many digits you typed."), measure->text));
  *out = (gint32) round (value);
  return TRUE;
}

static gboolean
fail_twice (Parse         *parse,
            const Measure *measure)
{
  return fail (parse, measure->start, measure->end,
               g_markup_printf_escaped (_("“%s” is one amount too many: this is already in the line."),
                                        measure->text));
}

static gboolean
set_feed (Parse         *parse,
          const Measure *measure)
{
  g_autoptr(GError) error = NULL;
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, parse->self->farm->units);
  double kg;

  if (!isnan (parse->reading->entry.feed_kg))
    return fail_twice (parse, measure);
  if (!stead_quantity_parse (measure->text, STEAD_DIMENSION_MASS, unit, &kg, NULL, &error))
    return fail_with (parse, measure->start, measure->end, error);
  parse->reading->entry.feed_kg = kg;
  return TRUE;
}

static gboolean
set_use (Parse           *parse,
         const Measure   *measure,
         const SteadItem *item)
{
  g_autoptr(GError) error = NULL;
  double base;

  if (parse->flock != NULL && item->id == parse->flock->feed_item_id
      && item->unit->dimension == STEAD_DIMENSION_MASS)
    return set_feed (parse, measure);
  if (parse->reading->use_item_id != 0)
    return fail (parse, measure->start, measure->end,
                 g_strdup (_("A line can take one thing from the store room. Enter the other in a line of its own.")));
  if (!stead_quantity_parse (measure->text, item->unit->dimension, item->unit, &base, NULL, &error))
    return fail_with (parse, measure->start, measure->end, error);
  if (!(base > 0))
    return fail (parse, measure->start, measure->end, g_strdup (_("The amount that was used must be above 0.")));
  parse->reading->use_item_id = item->id;
  parse->reading->use_base = base;
  return TRUE;
}

/* The one kind of bedding that the farm has. */
static const SteadItem *
only_bedding (const SteadLineReader *self,
              guint                 *n)
{
  const SteadItem *only = NULL;

  *n = 0;
  for (guint i = 0; i < self->items->len; i++)
    {
      const SteadItem *item = self->items->pdata[i];

      if (item->kind != STEAD_ITEM_BEDDING)
        continue;
      only = item;
      (*n)++;
    }
  return *n == 1 ? only : NULL;
}

static gboolean
set_bedding (Parse         *parse,
             const Measure *measure)
{
  guint n;
  const SteadItem *item = only_bedding (parse->self, &n);

  if (item != NULL)
    return set_use (parse, measure, item);
  return fail (parse, measure->start, measure->end,
               g_strdup (n == 0 ? _("No bedding is in the store room yet. Add it in Keep first.")
                                : _("There are several kinds of bedding. Name the one that was used.")));
}

static gboolean
set_count (Parse         *parse,
           const Measure *measure,
           SteadWord      word)
{
  SteadFlockEntry *entry = &parse->reading->entry;

  switch (word)
    {
    case STEAD_WORD_EGGS:
      return entry->eggs != STEAD_COUNT_NONE ? fail_twice (parse, measure)
                                             : read_count (parse, measure, &entry->eggs);
    case STEAD_WORD_CRACKED:
      if (parse->has_cracked)
        return fail_twice (parse, measure);
      parse->has_cracked = TRUE;
      return read_count (parse, measure, &entry->cracked);
    case STEAD_WORD_DEAD:
      return entry->deaths != 0 ? fail_twice (parse, measure) : read_count (parse, measure, &entry->deaths);
    case STEAD_WORD_CULLED:
      return entry->culled != 0 ? fail_twice (parse, measure) : read_count (parse, measure, &entry->culled);
    case STEAD_WORD_FEED: return set_feed (parse, measure);
    case STEAD_WORD_BEDDING: return set_bedding (parse, measure);
    case STEAD_WORD_NONE:
    case STEAD_WORD_BY:
    case STEAD_WORD_NOTE:
    case STEAD_WORD_FILLER:
    default:
      g_return_val_if_reached (FALSE);
    }
}

static gboolean
is_kind (SteadWord word)
{
  return word != STEAD_WORD_NONE && word != STEAD_WORD_BY && word != STEAD_WORD_NOTE
         && word != STEAD_WORD_FILLER;
}

/* The names of a list of facts whose second field is a name, for matching. */
static const char **
names_of (GPtrArray *facts,
          gsize      name_offset)
{
  const char **names = g_new0 (const char *, facts->len + 1);

  for (guint i = 0; i < facts->len; i++)
    names[i] = G_STRUCT_MEMBER (char *, facts->pdata[i], name_offset);
  return names;
}

/* The cursor goes behind a name that takes @length bytes from @start. */
static void
skip_name (Parse *parse,
           int    start,
           int    length)
{
  const SteadToken *token;

  while ((token = token_at (parse, parse->at)) != NULL && token->start < start + length)
    parse->at++;
}

static const SteadItem *
match_item (Parse *parse)
{
  const SteadToken *token = token_at (parse, parse->at);
  g_autofree const char **names = NULL;
  SteadNameMatch match;

  if (token == NULL || token->kind != STEAD_TOKEN_WORD)
    return NULL;
  names = names_of (parse->self->items, G_STRUCT_OFFSET (SteadItem, name));
  match = stead_line_match_name (parse->line + token->start, names, NAME_WORDS);
  if (match.index < 0)
    return NULL;
  skip_name (parse, token->start, match.length);
  return parse->self->items->pdata[match.index];
}

/* "22 eggs", "6.8 lb of feed", "20 lb grit", "6.8 lb": an amount and its word. */
static gboolean
take_amount (Parse *parse)
{
  g_auto(Measure) measure = { 0 };
  const SteadItem *item;
  const SteadToken *next;
  SteadWord word;

  take_measure (parse, &measure);
  skip_fillers (parse);
  word = word_at (parse, parse->at);
  if (is_kind (word))
    {
      parse->at++;
      return set_count (parse, &measure, word);
    }
  item = match_item (parse);
  if (item != NULL)
    return set_use (parse, &measure, item);
  next = token_at (parse, parse->at);
  if (measure.unit != NULL && measure.unit->dimension == STEAD_DIMENSION_MASS
      && (next == NULL || next->kind != STEAD_TOKEN_WORD || word == STEAD_WORD_BY))
    return set_feed (parse, &measure);
  if (next != NULL && next->kind == STEAD_TOKEN_WORD && word == STEAD_WORD_NONE)
    {
      g_autofree char *text = text_of (parse, next->start, next->end);

      return fail (parse, next->start, next->end,
                   g_markup_printf_escaped (_("“%s” is not known here. Say “22 eggs”, “1 cracked”, “6.8 lb feed”, "
                                              "“1 dead”, or a thing of the store room."), text));
    }
  return fail (parse, measure.start, measure.end,
               g_markup_printf_escaped (_("“%s” of what? Say for example “22 eggs”."), measure.text));
}

/* "eggs 22", "feed: 6.8 lb" */
static gboolean
take_amount_after (Parse     *parse,
                   SteadWord  word)
{
  g_auto(Measure) measure = { 0 };
  const SteadToken *token = token_at (parse, parse->at);

  parse->at++;
  skip_fillers (parse);
  if (is_number (token_at (parse, parse->at)))
    {
      take_measure (parse, &measure);
      return set_count (parse, &measure, word);
    }
  measure.text = text_of (parse, token->start, token->end);
  return fail (parse, token->start, token->end,
               g_markup_printf_escaped (_("How many for “%s”? Put the number before it, as in “22 eggs”."),
                                        measure.text));
}

/* "no eggs", "sin huevos" */
static gboolean
take_none (Parse *parse)
{
  const SteadToken *token = token_at (parse, parse->at);
  g_auto(Measure) measure = { .text = g_strdup ("0"), .start = token->start, .end = token->end };
  SteadWord word = word_at (parse, parse->at + 1);

  if (!is_kind (word))
    return fail (parse, token->start, token->end, g_strdup (_("None of what? Say for example “no eggs”.")));
  parse->at += 2;
  return set_count (parse, &measure, word);
}

static gboolean
take_person (Parse *parse)
{
  const SteadToken *by = token_at (parse, parse->at);
  const SteadToken *name = token_at (parse, parse->at + 1);
  g_autofree const char **names = NULL;
  g_autofree char *text = NULL;
  SteadNameMatch match;

  if (name == NULL)
    return fail (parse, by->start, by->end, g_strdup (_("By whom? Type a name.")));
  names = names_of (parse->self->people, G_STRUCT_OFFSET (SteadPerson, name));
  match = stead_line_match_name (parse->line + name->start, names, NAME_WORDS);
  parse->at++;
  if (match.index >= 0)
    {
      skip_name (parse, name->start, match.length);
      parse->reading->entry.person_id = ((const SteadPerson *) parse->self->people->pdata[match.index])->id;
      return TRUE;
    }
  text = text_of (parse, name->start, name->end);
  return fail (parse, name->start, name->end,
               match.doubtful
               ? g_markup_printf_escaped (_("Several people match “%s”. Type more of the name."), text)
               : g_markup_printf_escaped (_("“%s” is not on the list of people."), text));
}

static gboolean
set_day (Parse      *parse,
         int         start,
         int         end,
         guint       n_tokens)
{
  g_autofree char *text = text_of (parse, start, end);
  g_autoptr(GError) error = NULL;
  SteadDay day;

  if (!stead_day_parse (text, parse->today, STEAD_DATE_ORDER_UNKNOWN, &day, &error))
    return fail_with (parse, start, end, error);
  if (parse->has_day)
    return fail (parse, start, end,
                 g_markup_printf_escaped (_("“%s” is a second day. A line is of one day."), text));
  parse->has_day = TRUE;
  parse->reading->entry.day = day;
  parse->at += n_tokens;
  return TRUE;
}

/* How many tokens from the cursor on are a day with a named month, or a word
 * for one; 0: none. */
static guint
count_day_tokens (const Parse *parse)
{
  const SteadToken *first = token_at (parse, parse->at);
  guint n = 1;

  if (first->kind == STEAD_TOKEN_DATE)
    return 1;
  if (first->kind == STEAD_TOKEN_OTHER || word_at (parse, parse->at) != STEAD_WORD_NONE)
    return 0;
  for (n = 1; n <= 3; n++)
    {
      const SteadToken *last = token_at (parse, parse->at + n - 1);
      g_autofree char *text = NULL;
      SteadDay day;

      if (last == NULL)
        return 0;
      /* A number and a name, perhaps with "de" between; "3/29 18" are two numbers. */
      if ((n == 1 && first->kind == STEAD_TOKEN_NUMBER) || (n > 1 && first->kind == last->kind)
          || (n == 3 && word_at (parse, parse->at + 1) != STEAD_WORD_FILLER))
        continue;
      text = text_of (parse, first->start, last->end);
      if (stead_day_parse (text, parse->today, STEAD_DATE_ORDER_UNKNOWN, &day, NULL))
        break;
    }
  return n <= 3 ? n : 0;
}

/* A year of four digits may follow "Mar 3" or "3 de marzo de". */
static guint
count_year_tokens (const Parse *parse,
                   guint        n)
{
  guint at = parse->at + n;
  const SteadToken *year;

  if (n < 2)
    return n;
  if (word_at (parse, at) == STEAD_WORD_FILLER)
    at++;
  year = token_at (parse, at);
  if (!is_number (year) || year->end - year->start != 4
      || (!g_str_has_prefix (parse->line + year->start, "19") && !g_str_has_prefix (parse->line + year->start, "20")))
    return n;
  /* "Mar 3 2000 eggs" is a count. */
  if (is_kind (word_at (parse, at + 1)) || unit_at (parse, at + 1) != NULL)
    return n;
  return at + 1 - parse->at;
}

/* Whether a day was taken; FALSE leaves the cursor alone unless a fault was told. */
static gboolean
take_day (Parse *parse)
{
  const SteadToken *first = token_at (parse, parse->at);
  guint n = count_day_tokens (parse);

  if (n == 0 && is_fraction (parse, first) && unit_at (parse, parse->at + 1) == NULL
      && !is_kind (word_at (parse, parse->at + 1)))
    n = 1;
  if (n == 0)
    return FALSE;
  n = count_year_tokens (parse, n);
  return set_day (parse, first->start, token_at (parse, parse->at + n - 1)->end, n);
}

/* A flock's name in the middle or at the end of the line. */
static gboolean
take_flock (Parse *parse)
{
  const SteadToken *token = token_at (parse, parse->at);
  g_autofree const char **names = names_of (parse->self->flocks, G_STRUCT_OFFSET (SteadFlock, name));
  SteadNameMatch match = stead_line_match_name (parse->line + token->start, names, 0);

  if (match.index < 0)
    return FALSE;
  skip_name (parse, token->start, match.length);
  if (parse->flock == NULL)
    parse->flock = parse->self->flocks->pdata[match.index];
  return TRUE;
}

static gboolean
is_none (const SteadToken *token)
{
  static const char * const none[] = { "no", "none", "zero", "sin", "cero", "ningun", "ninguna", NULL };

  return token->kind == STEAD_TOKEN_WORD && g_strv_contains (none, token->folded);
}

static gboolean
take_phrase (Parse *parse)
{
  const SteadToken *token = token_at (parse, parse->at);
  SteadWord word = word_at (parse, parse->at);
  const SteadItem *item;
  g_autofree char *text = NULL;

  /* A flock may be called "Hens", which is also a word that says nothing. */
  if (token->kind == STEAD_TOKEN_WORD && take_flock (parse))
    return TRUE;
  if (word == STEAD_WORD_FILLER)
    {
      parse->at++;
      return TRUE;
    }
  if (word == STEAD_WORD_BY)
    return take_person (parse);
  if (is_kind (word))
    return take_amount_after (parse, word);
  if (take_day (parse))
    return TRUE;
  if (parse->reading->understood != NULL)
    return FALSE;
  if (token->kind == STEAD_TOKEN_NUMBER)
    return take_amount (parse);
  if (is_none (token))
    return take_none (parse);
  item = match_item (parse);
  if (item != NULL && is_number (token_at (parse, parse->at)))
    {
      g_auto(Measure) measure = { 0 };

      take_measure (parse, &measure);
      return set_use (parse, &measure, item);
    }
  text = text_of (parse, token->start, token->end);
  return fail (parse, token->start, token->end,
               g_markup_printf_escaped (_("“%s” is not understood. Say for example “22 eggs, 1 cracked, 6.8 lb feed”."),
                                        text));
}

/* Cuts "note: windy" off; returns where the rest of the line ends. */
static int
take_note (Parse *parse)
{
  for (guint i = 0; i < parse->tokens->len; i++)
    {
      const SteadToken *token = token_at (parse, i);
      const char *text;
      int end = token->start;

      if (word_at (parse, i) != STEAD_WORD_NOTE)
        continue;
      text = parse->line + token->end;
      text += strspn (text, " :");
      if (*text != '\0')
        parse->reading->entry.note = g_strchomp (g_strdup (text));
      g_array_set_size (parse->tokens, i);
      return end;
    }
  return (int) strlen (parse->line);
}

static gboolean
fail_flock (Parse      *parse,
            int         start,
            int         length,
            gboolean    doubtful)
{
  g_autofree char *text = text_of (parse, start, start + length);
  g_autofree char *trimmed = g_strstrip (g_strdup (text));

  return fail (parse, start, start + length,
               doubtful
               ? g_markup_printf_escaped (_("Several flocks match “%s”. Type more of the name."), trimmed)
               : g_markup_printf_escaped (_("There is no flock “%s”. Begin the line with a flock's name."), trimmed));
}

/* "Hens 2: …", or a name at the start without the colon. */
static gboolean
take_first_flock (Parse *parse,
                  int    end)
{
  const SteadToken *first = token_at (parse, 0);
  g_autofree const char **names = NULL;
  const char *colon;
  SteadNameMatch match;
  gboolean is_word;

  if (first == NULL || (first->kind != STEAD_TOKEN_WORD && first->kind != STEAD_TOKEN_NUMBER))
    return TRUE;
  names = names_of (parse->self->flocks, G_STRUCT_OFFSET (SteadFlock, name));
  colon = memchr (parse->line + first->start, ':', (gsize) (end - first->start));
  is_word = word_at (parse, 0) != STEAD_WORD_NONE && word_at (parse, 0) != STEAD_WORD_FILLER;
  match = stead_line_match_name (parse->line + first->start, names,
                                 first->kind == STEAD_TOKEN_WORD && !is_word ? NAME_WORDS : 0);
  if (match.index >= 0)
    {
      parse->flock = parse->self->flocks->pdata[match.index];
      skip_name (parse, first->start, match.length);
      return TRUE;
    }
  if (colon == NULL || is_word)
    return TRUE;
  return fail_flock (parse, first->start, (int) (colon - parse->line) - first->start, match.doubtful);
}

static gboolean
settle_flock (Parse *parse)
{
  GPtrArray *flocks = parse->self->flocks;
  g_autofree const char **names = NULL;
  g_autofree char *list = NULL;

  if (parse->flock == NULL && flocks->len == 1)
    parse->flock = flocks->pdata[0];
  if (parse->flock != NULL)
    {
      parse->reading->entry.flock_id = parse->flock->id;
      return TRUE;
    }
  if (flocks->len == 0)
    return fail (parse, -1, -1, g_strdup (_("There is no flock yet. Set one up in Raise first.")));
  names = names_of (flocks, G_STRUCT_OFFSET (SteadFlock, name));
  list = stead_words_list (names);
  return fail (parse, -1, -1, g_markup_printf_escaped (_("Begin the line with the flock: %s."), list));
}

static gint64
hens_alive (const Parse *parse)
{
  for (guint i = 0; i < parse->self->flocks->len; i++)
    if (parse->self->flocks->pdata[i] == parse->flock && parse->reading->entry.day >= parse->self->read_on)
      return g_array_index (parse->self->alive, gint64, i);
  /* An earlier day had more hens: the store counts them when it records. */
  return parse->flock->birds;
}

gboolean
stead_line_has_entry (const SteadLineReading *reading)
{
  const SteadFlockEntry *entry = &reading->entry;

  return entry->eggs != STEAD_COUNT_NONE || entry->cracked > 0 || entry->deaths > 0 || entry->culled > 0
         || !isnan (entry->feed_kg) || entry->note != NULL;
}

/* Whether what was read can be recorded as it stands. */
static gboolean
check (Parse *parse)
{
  SteadLineReading *reading = parse->reading;
  g_autoptr(GError) error = NULL;

  if (!settle_flock (parse))
    return FALSE;
  if (!stead_line_has_entry (reading) && reading->use_item_id == 0)
    return fail (parse, -1, -1, g_strdup (_("Now type what happened, such as “22 eggs, 1 cracked, 6.8 lb feed”.")));
  if (reading->entry.cracked > 0 && reading->entry.eggs == STEAD_COUNT_NONE)
    return fail (parse, -1, -1, g_strdup (_("Say how many eggs there were in all, cracked ones too.")));
  if (stead_line_has_entry (reading)
      && !stead_flock_entry_check (&reading->entry, parse->flock, hens_alive (parse), parse->today, &error))
    return fail_with (parse, -1, -1, error);
  if (!stead_line_has_entry (reading)
      && (reading->entry.day > parse->today || reading->entry.day < parse->flock->housed_on))
    return fail (parse, -1, -1, g_strdup (_("This day lies after today, or before the flock came.")));
  return TRUE;
}

static gboolean
read_line (Parse *parse)
{
  int end = take_note (parse);

  if (parse->tokens->len == 0 && parse->reading->entry.note == NULL)
    return fail (parse, -1, -1, g_strdup (_("Type what happened, such as “22 eggs, 1 cracked, 6.8 lb feed”.")));
  if (!take_first_flock (parse, end))
    return FALSE;
  while (parse->at < parse->tokens->len)
    if (!take_phrase (parse))
      return FALSE;
  return check (parse);
}

SteadLineReading *
stead_line_reader_read (SteadLineReader *self,
                        const char      *line,
                        SteadDay         today)
{
  SteadLineReading *reading;
  g_autoptr(GArray) tokens = NULL;
  Parse parse;

  g_return_val_if_fail (self != NULL && line != NULL, NULL);

  reading = g_new0 (SteadLineReading, 1);
  reading->entry = (SteadFlockEntry) { .day = today, .eggs = STEAD_COUNT_NONE, .feed_kg = NAN };
  reading->error_start = -1;
  reading->error_end = -1;
  if (!g_utf8_validate (line, -1, NULL))
    {
      reading->understood = g_strdup (_("This is not readable text. Type it again."));
      return reading;
    }
  tokens = stead_line_tokens (line, 0, (int) strlen (line));
  parse = (Parse) { .self = self, .line = line, .tokens = tokens, .today = today, .reading = reading };
  reading->complete = read_line (&parse);
  if (reading->complete)
    reading->understood = stead_line_understood (self, reading, today);
  return reading;
}
