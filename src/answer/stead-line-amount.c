/* stead-line-amount.c - "22 eggs", "eggs 22", "6.8 lb of feed": amounts in a typed line. */
#include "config.h"

#include "answer/stead-line-parse-private.h"
#include "core/stead-quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MAX_COUNT 1e6

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

/* "6.8 lb", "2 lb 4 oz", "1 1/2 cups", "22": from the number at the cursor on. */
static void
take_measure (SteadParse *parse,
              Measure    *measure)
{
  const SteadToken *token = stead_parse_token_at (parse, parse->at);
  const SteadUnit *unit;

  measure->start = token->start;
  measure->end = token->end;
  parse->at++;
  if (!stead_parse_is_fraction (parse, token)
      && stead_parse_is_fraction (parse, stead_parse_token_at (parse, parse->at)))
    measure->end = stead_parse_token_at (parse, parse->at++)->end;
  while ((unit = stead_parse_unit_at (parse, parse->at)) != NULL)
    {
      if (measure->unit == NULL)
        measure->unit = unit;
      measure->end = stead_parse_token_at (parse, parse->at++)->end;
      /* Weights have parts, "2 lb 4 oz"; temperatures do not. */
      if (unit->dimension == STEAD_DIMENSION_TEMPERATURE
          || !stead_parse_is_number (stead_parse_token_at (parse, parse->at))
          || stead_parse_unit_at (parse, parse->at + 1) == NULL)
        break;
      measure->end = stead_parse_token_at (parse, parse->at++)->end;
    }
  measure->text = stead_parse_text_of (parse, measure->start, measure->end);
}

/* Eggs, hens: pieces, and whole ones. */
static gboolean
read_count (SteadParse    *parse,
            const Measure *measure,
            gint32        *out)
{
  g_autoptr(GError) error = NULL;
  double value;

  if (!stead_quantity_parse (measure->text, STEAD_DIMENSION_COUNT, stead_unit_by_id ("ea"), &value, NULL, &error))
    return stead_parse_fail_with (parse, measure->start, measure->end, error);
  if (fabs (value - round (value)) > 1e-9)
    return stead_parse_fail (parse, measure->start, measure->end,
                             g_markup_printf_escaped (_("“%s” is not a whole number. Eggs, birds and fish are counted whole."),
                                                      measure->text));
  if (value > MAX_COUNT)
    return stead_parse_fail (parse, measure->start, measure->end,
                             g_markup_printf_escaped (_("“%s” is too large. Check how many digits you typed."), measure->text));
  *out = (gint32) round (value);
  return TRUE;
}

static gboolean
fail_twice (SteadParse    *parse,
            const Measure *measure)
{
  return stead_parse_fail (parse, measure->start, measure->end,
                           g_markup_printf_escaped (_("“%s” is one amount too many: this is already in the line."),
                                                    measure->text));
}

static gboolean
set_feed (SteadParse    *parse,
          const Measure *measure)
{
  g_autoptr(GError) error = NULL;
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, parse->self->farm->units);
  double kg;

  if (!isnan (parse->reading->entry.feed_kg))
    return fail_twice (parse, measure);
  if (!stead_quantity_parse (measure->text, STEAD_DIMENSION_MASS, unit, &kg, NULL, &error))
    return stead_parse_fail_with (parse, measure->start, measure->end, error);
  parse->reading->entry.feed_kg = kg;
  return TRUE;
}

static gboolean
set_water (SteadParse    *parse,
           const Measure *measure)
{
  g_autoptr(GError) error = NULL;
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, parse->self->farm->units);
  double water_c;

  if (!isnan (parse->reading->water_c))
    return fail_twice (parse, measure);
  if (!stead_quantity_parse (measure->text, STEAD_DIMENSION_TEMPERATURE, unit, &water_c, NULL, &error))
    return stead_parse_fail_with (parse, measure->start, measure->end, error);
  parse->reading->water_c = water_c;
  return TRUE;
}

static gboolean
set_use (SteadParse      *parse,
         const Measure   *measure,
         const SteadItem *item)
{
  g_autoptr(GError) error = NULL;
  double base;

  if (item->id == stead_parse_feed_item (parse) && item->unit->dimension == STEAD_DIMENSION_MASS)
    return set_feed (parse, measure);
  if (parse->reading->use_item_id != 0)
    return stead_parse_fail (parse, measure->start, measure->end,
                             g_strdup (_("A line can take one thing from the store room. Enter the other in a line of its own.")));
  if (!stead_quantity_parse (measure->text, item->unit->dimension, item->unit, &base, NULL, &error))
    return stead_parse_fail_with (parse, measure->start, measure->end, error);
  if (!(base > 0))
    return stead_parse_fail (parse, measure->start, measure->end, g_strdup (_("The amount that was used must be above 0.")));
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
set_bedding (SteadParse    *parse,
             const Measure *measure)
{
  guint n;
  const SteadItem *item = only_bedding (parse->self, &n);

  if (item != NULL)
    return set_use (parse, measure, item);
  return stead_parse_fail (parse, measure->start, measure->end,
                           g_strdup (n == 0 ? _("No bedding is in the store room yet. Add it in Keep first.")
                                            : _("There are several kinds of bedding. Name the one that was used.")));
}

static gboolean
set_count (SteadParse    *parse,
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
    case STEAD_WORD_WATER: return set_water (parse, measure);
    case STEAD_WORD_REFUSED:
    case STEAD_WORD_NONE:
    case STEAD_WORD_BY:
    case STEAD_WORD_NOTE:
    case STEAD_WORD_FILLER:
    default:
      g_return_val_if_reached (FALSE);
    }
}

static const SteadItem *
match_item (SteadParse *parse)
{
  const SteadToken *token = stead_parse_token_at (parse, parse->at);
  g_autofree const char **names = NULL;
  SteadNameMatch match;

  if (token == NULL || token->kind != STEAD_TOKEN_WORD)
    return NULL;
  names = stead_parse_names (parse->self->items, G_STRUCT_OFFSET (SteadItem, name));
  match = stead_line_match_name (parse->line + token->start, names, STEAD_NAME_WORDS);
  if (match.index < 0)
    return NULL;
  stead_parse_skip_name (parse, token->start, match.length);
  return parse->self->items->pdata[match.index];
}

/* "22 eggs", "6.8 lb of feed", "20 lb grit", "6.8 lb": an amount and its word. */
gboolean
stead_parse_take_amount (SteadParse *parse)
{
  g_auto(Measure) measure = { 0 };
  const SteadItem *item;
  const SteadToken *next;
  SteadWord word;

  take_measure (parse, &measure);
  stead_parse_skip_fillers (parse);
  word = stead_parse_word_at (parse, parse->at);
  if (stead_parse_is_kind (word))
    {
      parse->at++;
      return set_count (parse, &measure, word);
    }
  item = match_item (parse);
  if (item != NULL)
    return set_use (parse, &measure, item);
  next = stead_parse_token_at (parse, parse->at);
  if (measure.unit != NULL && measure.unit->dimension == STEAD_DIMENSION_MASS
      && (next == NULL || next->kind != STEAD_TOKEN_WORD || word == STEAD_WORD_BY))
    return set_feed (parse, &measure);
  if (measure.unit != NULL && measure.unit->dimension == STEAD_DIMENSION_TEMPERATURE)
    return set_water (parse, &measure);
  if (next != NULL && next->kind == STEAD_TOKEN_WORD && word == STEAD_WORD_NONE)
    {
      g_autofree char *text = stead_parse_text_of (parse, next->start, next->end);

      if (parse->subject != NULL && parse->subject->fish != NULL)
        return stead_parse_fail (parse, next->start, next->end,
                                 g_markup_printf_escaped (_("“%s” is not known here. Say “1.2 lb feed”, “1 dead” or “78 F”, a "
                                                            "remark such as “feed left”, or a thing of the store room."), text));
      return stead_parse_fail (parse, next->start, next->end,
                               g_markup_printf_escaped (_("“%s” is not known here. Say “22 eggs”, “1 cracked”, “6.8 lb feed”, "
                                                          "“1 dead”, or a thing of the store room."), text));
    }
  return stead_parse_fail (parse, measure.start, measure.end,
                           g_markup_printf_escaped (_("“%s” of what? Say for example “22 eggs”."), measure.text));
}

/* "eggs 22", "feed: 6.8 lb" */
gboolean
stead_parse_take_amount_after (SteadParse *parse,
                               SteadWord   word)
{
  g_auto(Measure) measure = { 0 };
  const SteadToken *token = stead_parse_token_at (parse, parse->at);

  parse->at++;
  stead_parse_skip_fillers (parse);
  if (stead_parse_is_number (stead_parse_token_at (parse, parse->at)))
    {
      take_measure (parse, &measure);
      return set_count (parse, &measure, word);
    }
  measure.text = stead_parse_text_of (parse, token->start, token->end);
  return stead_parse_fail (parse, token->start, token->end,
                           g_markup_printf_escaped (_("How many for “%s”? Put the number before it, as in “22 eggs”."),
                                                    measure.text));
}

/* "no eggs", "sin huevos" */
gboolean
stead_parse_take_none (SteadParse *parse)
{
  const SteadToken *token = stead_parse_token_at (parse, parse->at);
  g_auto(Measure) measure = { .text = g_strdup ("0"), .start = token->start, .end = token->end };
  SteadWord word = stead_parse_word_at (parse, parse->at + 1);

  if (!stead_parse_is_kind (word))
    return stead_parse_fail (parse, token->start, token->end, g_strdup (_("None of what? Say for example “no eggs”.")));
  parse->at += 2;
  return set_count (parse, &measure, word);
}

/* "straw 2" */
gboolean
stead_parse_take_item (SteadParse *parse)
{
  guint from = parse->at;
  const SteadItem *item = match_item (parse);
  g_auto(Measure) measure = { 0 };

  if (item == NULL || !stead_parse_is_number (stead_parse_token_at (parse, parse->at)))
    {
      parse->at = from;
      return FALSE;
    }
  take_measure (parse, &measure);
  return set_use (parse, &measure, item);
}
