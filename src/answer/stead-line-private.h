/* stead-line-private.h - the parts of the one-line entry's reader. */
#pragma once

#include "answer/stead-line-answer.h"
#include "store/stead-item-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_TOKEN_NUMBER,   /* "22", "6,8", "1/2", "2½"; may be a day too: "3/4" */
  STEAD_TOKEN_DATE,     /* "2026-03-03", "3/3/2026", "3.3.26" */
  STEAD_TOKEN_WORD,
  STEAD_TOKEN_OTHER,    /* a sign that means nothing here */
} SteadTokenKind;

/* A piece of the line, by its bytes. */
typedef struct
{
  SteadTokenKind  kind;
  int             start;
  int             end;
  char           *folded;   /* lower case, without accents: for words */
} SteadToken;

/* (transfer full) (element-type SteadToken): @line from byte @start up to byte @end */
GArray *stead_line_tokens (const char *line,
                           int         start,
                           int         end) G_GNUC_WARN_UNUSED_RESULT;

/* Lower case without accents, for comparing names and words. */
char *stead_line_fold (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* What a word of the line means. */
typedef enum
{
  STEAD_WORD_NONE,
  STEAD_WORD_EGGS,
  STEAD_WORD_CRACKED,
  STEAD_WORD_FEED,
  STEAD_WORD_DEAD,
  STEAD_WORD_CULLED,
  STEAD_WORD_BEDDING,
  STEAD_WORD_WATER,     /* a temperature goes with it */
  STEAD_WORD_REFUSED,   /* feed was left: no number goes with it */
  STEAD_WORD_BY,        /* a person follows */
  STEAD_WORD_NOTE,      /* the rest of the line follows */
  STEAD_WORD_FILLER,    /* "of", "and", "hen": says nothing by itself */
} SteadWord;

SteadWord stead_line_word (const char *folded);

/* The word that is offered for one meaning, in the person's language. */
const char *stead_line_word_offered (SteadWord word);

/* A name that a line may begin with, and what it stands for: one of the two. */
typedef struct
{
  const char       *name;    /* of the flock or the group, or of the tank of one group */
  const SteadFlock *flock;
  const SteadFish  *fish;
  gint64            alive;   /* hens when the reader was made */
  SteadFishStand    stand;   /* fish then */
} SteadLineSubject;

struct _SteadLineReader
{
  SteadFarm *farm;
  GPtrArray *flocks;    /* of SteadFlock, under way */
  GPtrArray *fish;      /* of SteadFish, under way */
  GPtrArray *tanks;     /* of SteadTank */
  GPtrArray *subjects;  /* of SteadLineSubject: flocks, groups, then tanks */
  GPtrArray *people;    /* of SteadPerson, still here */
  GPtrArray *items;     /* of SteadItem */
  SteadDay   read_on;   /* the day for which alive holds */
};

/* Where a name stands in @text; the longest of those that match. */
typedef struct
{
  int      index;     /* in the list of names; -1: none */
  int      length;    /* bytes of @text that it takes */
  gboolean doubtful;  /* several names begin like this */
} SteadNameMatch;

/* Compares whole words without case and accents.  @n_words > 0 also takes a name
 * of which @text has only the beginning, up to so many words, if no other does. */
SteadNameMatch stead_line_match_name (const char         *text,
                                      const char * const *names,
                                      int                 n_words);

/* "Brown hens, today: 22 eggs, 1 of them cracked." */
char *stead_line_understood (const SteadLineReader  *self,
                             const SteadLineReading *reading,
                             SteadDay                today) G_GNUC_WARN_UNUSED_RESULT;

/* What to type, for a line of fish or of a flock: “22 eggs, 1 cracked, 6.8 lb feed”. */
const char *stead_line_example (gboolean is_fish);

/* The entry of a line of fish; it borrows the reading's note. */
void stead_line_fish_entry (const SteadLineReading *reading,
                            SteadFishEntry         *out);

/* Whether the log gets an entry, or only something was used up. */
gboolean stead_line_has_entry (const SteadLineReading *reading);

G_END_DECLS
