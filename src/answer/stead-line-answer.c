/* stead-line-answer.c - reads "Hens: 22 eggs, 1 cracked, 6.8 lb feed".
 *
 * The line is cut into tokens, and phrases are taken from the left: a day, a
 * person, an amount with its word before or after it, a flock's name.  The
 * first token that fits nowhere is told with its place; nothing is guessed.
 */
#include "config.h"

#include "answer/stead-line-answer.h"
#include "answer/stead-line-parse-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

void
stead_line_reading_free (SteadLineReading *reading)
{
  if (reading == NULL)
    return;
  stead_flock_entry_clear (&reading->entry);
  g_free (reading->understood);
  g_free (reading);
}

static gboolean
take_person (SteadParse *parse)
{
  const SteadToken *by = stead_parse_token_at (parse, parse->at);
  const SteadToken *name = stead_parse_token_at (parse, parse->at + 1);
  g_autofree const char **names = NULL;
  g_autofree char *text = NULL;
  SteadNameMatch match;

  if (name == NULL)
    return stead_parse_fail (parse, by->start, by->end, g_strdup (_("By whom? Type a name.")));
  names = stead_parse_names (parse->self->people, G_STRUCT_OFFSET (SteadPerson, name));
  match = stead_line_match_name (parse->line + name->start, names, STEAD_NAME_WORDS);
  parse->at++;
  if (match.index >= 0)
    {
      stead_parse_skip_name (parse, name->start, match.length);
      parse->reading->entry.person_id = ((const SteadPerson *) parse->self->people->pdata[match.index])->id;
      return TRUE;
    }
  text = stead_parse_text_of (parse, name->start, name->end);
  return stead_parse_fail (parse, name->start, name->end,
                           match.doubtful
                           ? g_markup_printf_escaped (_("Several people match “%s”. Type more of the name."), text)
                           : g_markup_printf_escaped (_("“%s” is not on the list of people."), text));
}

static gboolean
set_day (SteadParse *parse,
         int         start,
         int         end,
         guint       n_tokens)
{
  g_autofree char *text = stead_parse_text_of (parse, start, end);
  g_autoptr(GError) error = NULL;
  SteadDay day;

  if (!stead_day_parse (text, parse->today, STEAD_DATE_ORDER_UNKNOWN, &day, &error))
    return stead_parse_fail_with (parse, start, end, error);
  if (parse->has_day)
    return stead_parse_fail (parse, start, end,
                             g_markup_printf_escaped (_("“%s” is a second day. A line is of one day."), text));
  parse->has_day = TRUE;
  parse->reading->entry.day = day;
  parse->at += n_tokens;
  return TRUE;
}

/* How many tokens from the cursor on are a day with a named month, or a word
 * for one; 0: none. */
static guint
count_day_tokens (const SteadParse *parse)
{
  const SteadToken *first = stead_parse_token_at (parse, parse->at);
  guint n = 1;

  if (first->kind == STEAD_TOKEN_DATE)
    return 1;
  if (first->kind == STEAD_TOKEN_OTHER || stead_parse_word_at (parse, parse->at) != STEAD_WORD_NONE)
    return 0;
  for (n = 1; n <= 3; n++)
    {
      const SteadToken *last = stead_parse_token_at (parse, parse->at + n - 1);
      g_autofree char *text = NULL;
      SteadDay day;

      if (last == NULL)
        return 0;
      /* A number and a name, perhaps with "de" between; "3/29 18" are two numbers. */
      if ((n == 1 && first->kind == STEAD_TOKEN_NUMBER) || (n > 1 && first->kind == last->kind)
          || (n == 3 && stead_parse_word_at (parse, parse->at + 1) != STEAD_WORD_FILLER))
        continue;
      text = stead_parse_text_of (parse, first->start, last->end);
      if (stead_day_parse (text, parse->today, STEAD_DATE_ORDER_UNKNOWN, &day, NULL))
        break;
    }
  return n <= 3 ? n : 0;
}

/* A year of four digits may follow "Mar 3" or "3 de marzo de". */
static guint
count_year_tokens (const SteadParse *parse,
                   guint             n)
{
  guint at = parse->at + n;
  const SteadToken *year;

  if (n < 2)
    return n;
  if (stead_parse_word_at (parse, at) == STEAD_WORD_FILLER)
    at++;
  year = stead_parse_token_at (parse, at);
  if (!stead_parse_is_number (year) || year->end - year->start != 4
      || (!g_str_has_prefix (parse->line + year->start, "19") && !g_str_has_prefix (parse->line + year->start, "20")))
    return n;
  /* "Mar 3 2000 eggs" is a count. */
  if (stead_parse_is_kind (stead_parse_word_at (parse, at + 1)) || stead_parse_unit_at (parse, at + 1) != NULL)
    return n;
  return at + 1 - parse->at;
}

/* Whether a day was taken; FALSE leaves the cursor alone unless a fault was told. */
static gboolean
take_day (SteadParse *parse)
{
  const SteadToken *first = stead_parse_token_at (parse, parse->at);
  guint n = count_day_tokens (parse);

  if (n == 0 && stead_parse_is_fraction (parse, first) && stead_parse_unit_at (parse, parse->at + 1) == NULL
      && !stead_parse_is_kind (stead_parse_word_at (parse, parse->at + 1)))
    n = 1;
  if (n == 0)
    return FALSE;
  n = count_year_tokens (parse, n);
  return set_day (parse, first->start, stead_parse_token_at (parse, parse->at + n - 1)->end, n);
}

/* The name of a batch in the middle or at the end of the line. */
static gboolean
take_subject (SteadParse *parse)
{
  const SteadToken *token = stead_parse_token_at (parse, parse->at);
  g_autofree const char **names = stead_parse_names (parse->self->subjects, G_STRUCT_OFFSET (SteadLineSubject, name));
  SteadNameMatch match = stead_line_match_name (parse->line + token->start, names, 0);

  if (match.index < 0)
    return FALSE;
  stead_parse_skip_name (parse, token->start, match.length);
  if (parse->subject == NULL)
    parse->subject = parse->self->subjects->pdata[match.index];
  return TRUE;
}

/* "feed left", "sobró alimento": needs no number. */
static gboolean
take_refused (SteadParse *parse)
{
  SteadWord word = stead_parse_word_at (parse, parse->at), next = stead_parse_word_at (parse, parse->at + 1);

  if (word != STEAD_WORD_REFUSED && !(word == STEAD_WORD_FEED && next == STEAD_WORD_REFUSED))
    return FALSE;
  parse->reading->refused = TRUE;
  parse->at++;
  if (word == STEAD_WORD_FEED
      || (next == STEAD_WORD_FEED && !stead_parse_is_number (stead_parse_token_at (parse, parse->at + 1))))
    parse->at++;
  return TRUE;
}

/* Whether examples should be of fish: the line is, or the farm has nothing else. */
static gboolean
is_of_fish (const SteadParse *parse)
{
  return parse->subject != NULL ? parse->subject->fish != NULL
         : parse->self->flocks->len == 0 && parse->self->fish->len > 0;
}

static gboolean
is_none (const SteadToken *token)
{
  static const char * const none[] = { "no", "none", "zero", "sin", "cero", "ningun", "ninguna", NULL };

  return token->kind == STEAD_TOKEN_WORD && g_strv_contains (none, token->folded);
}

static gboolean
take_phrase (SteadParse *parse)
{
  const SteadToken *token = stead_parse_token_at (parse, parse->at);
  SteadWord word = stead_parse_word_at (parse, parse->at);
  g_autofree char *text = NULL;

  /* A flock may be called "Hens", which is also a word that says nothing. */
  if (token->kind == STEAD_TOKEN_WORD && (take_subject (parse) || take_refused (parse)))
    return TRUE;
  if (word == STEAD_WORD_FILLER)
    {
      parse->at++;
      return TRUE;
    }
  if (word == STEAD_WORD_BY)
    return take_person (parse);
  if (stead_parse_is_kind (word))
    return stead_parse_take_amount_after (parse, word);
  if (take_day (parse))
    return TRUE;
  if (parse->reading->understood != NULL)
    return FALSE;
  if (token->kind == STEAD_TOKEN_NUMBER)
    return stead_parse_take_amount (parse);
  if (is_none (token))
    return stead_parse_take_none (parse);
  if (stead_parse_take_item (parse))
    return TRUE;
  if (parse->reading->understood != NULL)
    return FALSE;
  text = stead_parse_text_of (parse, token->start, token->end);
  return stead_parse_fail (parse, token->start, token->end,
                           g_markup_printf_escaped (_("“%s” is not understood. Say for example “%s”."), text,
                                                    stead_line_example (is_of_fish (parse))));
}

/* Cuts "note: windy" off; returns where the rest of the line ends. */
static int
take_note (SteadParse *parse)
{
  for (guint i = 0; i < parse->tokens->len; i++)
    {
      const SteadToken *token = stead_parse_token_at (parse, i);
      const char *text;
      int end = token->start;

      if (stead_parse_word_at (parse, i) != STEAD_WORD_NOTE)
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
fail_subject (SteadParse *parse,
              int         start,
              int         length,
              gboolean    doubtful)
{
  g_autofree char *text = stead_parse_text_of (parse, start, start + length);
  g_autofree char *trimmed = g_strstrip (g_strdup (text));

  if (parse->self->fish->len > 0)
    return stead_parse_fail (parse, start, start + length,
                             doubtful
                             ? g_markup_printf_escaped (_("Several names match “%s”. Type more of the name."), trimmed)
                             : g_markup_printf_escaped (_("Nothing here is called “%s”. Begin the line with a flock, "
                                                          "a group of fish or its tank."), trimmed));
  return stead_parse_fail (parse, start, start + length,
                           doubtful
                           ? g_markup_printf_escaped (_("Several flocks match “%s”. Type more of the name."), trimmed)
                           : g_markup_printf_escaped (_("There is no flock “%s”. Begin the line with a flock's name."), trimmed));
}

/* "Hens 2: …", or a name at the start without the colon. */
static gboolean
take_first_subject (SteadParse *parse,
                    int         end)
{
  const SteadToken *first = stead_parse_token_at (parse, 0);
  g_autofree const char **names = NULL;
  const char *colon;
  SteadNameMatch match;
  gboolean is_word;

  if (first == NULL || (first->kind != STEAD_TOKEN_WORD && first->kind != STEAD_TOKEN_NUMBER))
    return TRUE;
  names = stead_parse_names (parse->self->subjects, G_STRUCT_OFFSET (SteadLineSubject, name));
  colon = memchr (parse->line + first->start, ':', (gsize) (end - first->start));
  is_word = stead_parse_word_at (parse, 0) != STEAD_WORD_NONE && stead_parse_word_at (parse, 0) != STEAD_WORD_FILLER;
  match = stead_line_match_name (parse->line + first->start, names,
                                 first->kind == STEAD_TOKEN_WORD && !is_word ? STEAD_NAME_WORDS : 0);
  if (match.index >= 0)
    {
      parse->subject = parse->self->subjects->pdata[match.index];
      stead_parse_skip_name (parse, first->start, match.length);
      return TRUE;
    }
  if (colon == NULL || is_word)
    return TRUE;
  return fail_subject (parse, first->start, (int) (colon - parse->line) - first->start, match.doubtful);
}

/* Only a flock lays, and only the water of fish is measured. */
static gboolean
can_be (const SteadLineReading *reading,
        const SteadLineSubject *subject)
{
  gboolean laid = reading->entry.eggs != STEAD_COUNT_NONE || reading->entry.cracked > 0;
  gboolean of_water = reading->refused || !isnan (reading->water_c);

  return !(laid && subject->flock == NULL) && !(of_water && subject->fish == NULL);
}

/* The one batch that the line can mean; NULL if several could.  Each stands in the list
 * once by its own name, before the tanks. */
static const SteadLineSubject *
only_subject (const SteadParse *parse)
{
  guint n = parse->self->flocks->len + parse->self->fish->len;
  const SteadLineSubject *only = NULL;

  for (guint i = 0; i < n; i++)
    {
      const SteadLineSubject *subject = parse->self->subjects->pdata[i];

      if (!can_be (parse->reading, subject))
        continue;
      if (only != NULL)
        return NULL;
      only = subject;
    }
  return only;
}

static gboolean
settle_subject (SteadParse *parse)
{
  const SteadLineReader *self = parse->self;
  g_autofree const char **names = NULL;
  g_autofree char *list = NULL;

  if (parse->subject == NULL)
    parse->subject = only_subject (parse);
  if (parse->subject != NULL)
    {
      parse->reading->is_fish = parse->subject->fish != NULL;
      parse->reading->entry.flock_id = parse->subject->flock != NULL ? parse->subject->flock->id
                                                                     : parse->subject->fish->batch.id;
      return TRUE;
    }
  if (self->subjects->len == 0)
    return stead_parse_fail (parse, -1, -1, g_strdup (_("There is no flock yet. Set one up in Raise first.")));
  names = stead_parse_names (self->subjects, G_STRUCT_OFFSET (SteadLineSubject, name));
  names[self->flocks->len + self->fish->len] = NULL;
  list = stead_words_list (names);
  return stead_parse_fail (parse, -1, -1,
                           self->fish->len > 0
                           ? g_markup_printf_escaped (_("Begin the line with its name: %s."), list)
                           : g_markup_printf_escaped (_("Begin the line with the flock: %s."), list));
}

static gint64
hens_alive (const SteadParse *parse)
{
  if (parse->reading->entry.day >= parse->self->read_on)
    return parse->subject->alive;
  /* An earlier day had more hens: the store counts them when it records. */
  return parse->subject->flock->birds;
}

gboolean
stead_line_has_entry (const SteadLineReading *reading)
{
  const SteadFlockEntry *entry = &reading->entry;

  return entry->eggs != STEAD_COUNT_NONE || entry->cracked > 0 || entry->deaths > 0 || entry->culled > 0
         || !isnan (entry->feed_kg) || entry->note != NULL || reading->refused || !isnan (reading->water_c);
}

/* What is of a flock alone, in a line of fish, and the other way about. */
static gboolean
check_kind (SteadParse *parse)
{
  const SteadLineSubject *subject = parse->subject;

  if (can_be (parse->reading, subject))
    return TRUE;
  return stead_parse_fail (parse, -1, -1,
                           subject->fish != NULL
                           ? g_markup_printf_escaped (_("“%s” are fish: say for example “%s”."), subject->name,
                                                      stead_line_example (TRUE))
                           : g_markup_printf_escaped (_("“%s” is a flock: the temperature of the water and feed that was "
                                                        "left are kept of fish."), subject->name));
}

/* On an earlier day there may have been more: the store counts them when it records. */
static gboolean
check_fish (SteadParse *parse)
{
  const SteadLineReading *reading = parse->reading;
  SteadFishStand stand = parse->subject->stand;
  SteadFishEntry entry;
  g_autoptr(GError) error = NULL;

  stead_line_fish_entry (reading, &entry);
  if (entry.day < parse->self->read_on)
    stand.can_go = stand.there = MAX (stand.there, G_MAXINT32);
  return stead_fish_entry_check (&entry, parse->subject->fish, &stand, parse->today, &error)
         || stead_parse_fail_with (parse, -1, -1, error);
}

static gboolean
check_entry (SteadParse *parse)
{
  g_autoptr(GError) error = NULL;

  if (parse->subject->fish != NULL)
    return check_fish (parse);
  return stead_flock_entry_check (&parse->reading->entry, parse->subject->flock, hens_alive (parse), parse->today, &error)
         || stead_parse_fail_with (parse, -1, -1, error);
}

/* The first day of the log. */
static SteadDay
began_on (const SteadLineSubject *subject)
{
  return subject->flock != NULL ? subject->flock->housed_on : subject->fish->batch.started_on;
}

/* Whether what was read can be recorded as it stands. */
static gboolean
check (SteadParse *parse)
{
  SteadLineReading *reading = parse->reading;

  if (!settle_subject (parse) || !check_kind (parse))
    return FALSE;
  if (!stead_line_has_entry (reading) && reading->use_item_id == 0)
    return stead_parse_fail (parse, -1, -1, g_markup_printf_escaped (_("Now type what happened, such as “%s”."),
                                                                     stead_line_example (reading->is_fish)));
  if (reading->entry.cracked > 0 && reading->entry.eggs == STEAD_COUNT_NONE)
    return stead_parse_fail (parse, -1, -1, g_strdup (_("Say how many eggs there were in all, cracked ones too.")));
  if (stead_line_has_entry (reading))
    return check_entry (parse);
  if (reading->entry.day > parse->today || reading->entry.day < began_on (parse->subject))
    return stead_parse_fail (parse, -1, -1, g_strdup (_("This day lies after today, or before the flock came.")));
  return TRUE;
}

static gboolean
read_line (SteadParse *parse)
{
  int end = take_note (parse);

  if (parse->tokens->len == 0 && parse->reading->entry.note == NULL)
    return stead_parse_fail (parse, -1, -1, g_markup_printf_escaped (_("Type what happened, such as “%s”."),
                                                                     stead_line_example (is_of_fish (parse))));
  if (!take_first_subject (parse, end))
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
  SteadParse parse;

  g_return_val_if_fail (self != NULL && line != NULL, NULL);

  reading = g_new0 (SteadLineReading, 1);
  reading->entry = (SteadFlockEntry) { .day = today, .eggs = STEAD_COUNT_NONE, .feed_kg = NAN };
  reading->water_c = NAN;
  reading->error_start = -1;
  reading->error_end = -1;
  if (!g_utf8_validate (line, -1, NULL))
    {
      reading->understood = g_strdup (_("This is not readable text. Type it again."));
      return reading;
    }
  tokens = stead_line_tokens (line, 0, (int) strlen (line));
  parse = (SteadParse) { .self = self, .line = line, .tokens = tokens, .today = today, .reading = reading };
  reading->complete = read_line (&parse);
  if (reading->complete)
    reading->understood = stead_line_understood (self, reading, today);
  return reading;
}
