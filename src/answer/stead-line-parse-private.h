/* stead-line-parse-private.h - one reading of a typed line under way. */
#pragma once

#include "answer/stead-line-private.h"

G_BEGIN_DECLS

/* Words of a name that are looked at when only its beginning is typed. */
#define STEAD_NAME_WORDS 3

typedef struct
{
  const SteadLineReader *self;
  const char            *line;
  GArray                *tokens;
  guint                  at;
  SteadDay               today;
  const SteadLineSubject *subject;  /* named in the line, or the only one that can be meant */
  gboolean               has_cracked;
  gboolean               has_day;
  SteadLineReading      *reading;
} SteadParse;

/* Tells a fault at its place, bytes of the line, or -1 for the whole line.  Takes
 * @message, markup, over; the first fault counts.  Returns: %FALSE */
gboolean stead_parse_fail (SteadParse *parse,
                           int         start,
                           int         end,
                           char       *message);

/* The same with a message of the layer below. */
gboolean stead_parse_fail_with (SteadParse   *parse,
                                int           start,
                                int           end,
                                const GError *error);

/* What stands at a place in the line; NULL, NONE or FALSE past its end. */
const SteadToken *stead_parse_token_at    (const SteadParse *parse, guint at);
SteadWord         stead_parse_word_at     (const SteadParse *parse, guint at);
const SteadUnit  *stead_parse_unit_at     (const SteadParse *parse, guint at);
gboolean          stead_parse_is_number   (const SteadToken *token);
gboolean          stead_parse_is_fraction (const SteadParse *parse, const SteadToken *token);
char             *stead_parse_text_of     (const SteadParse *parse, int start, int end) G_GNUC_WARN_UNUSED_RESULT;

/* What the subject's feed is taken from; 0: not said */
gint64            stead_parse_feed_item   (const SteadParse *parse);

/* Whether a word says what an amount is of. */
gboolean stead_parse_is_kind (SteadWord word);

/* The cursor goes past words that say nothing; past a name of @length bytes. */
void stead_parse_skip_fillers (SteadParse *parse);
void stead_parse_skip_name    (SteadParse *parse, int start, int length);

/* (transfer container): the names of a list of facts, for matching */
const char **stead_parse_names (GPtrArray *facts,
                                gsize      name_offset) G_GNUC_WARN_UNUSED_RESULT;

/* "22 eggs", "eggs 22", "no eggs", "straw 2": each from the cursor on.  FALSE: a fault
 * was told; for an item also if there is none at the cursor. */
gboolean stead_parse_take_amount       (SteadParse *parse);
gboolean stead_parse_take_amount_after (SteadParse *parse, SteadWord word);
gboolean stead_parse_take_none         (SteadParse *parse);
gboolean stead_parse_take_item         (SteadParse *parse);

G_END_DECLS
