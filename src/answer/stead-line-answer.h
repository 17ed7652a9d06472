/* stead-line-answer.h - the one-line entry: "Hens: 22 eggs, 1 cracked, 6.8 lb feed",
 * "Tank A: 1.2 lb feed, 1 dead, 78 F, feed left".
 *
 * The line names a flock, or a group of fish or its tank (it may be left out when only
 * one can be meant), then amounts in any order, then perhaps a day ("yesterday",
 * "Mar 3") and a person ("by Ana").
 * English words always work, Spanish ones too.  A note goes to the end of
 * the line: "note: windy".
 */
#pragma once

#include "store/stead-farm-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-flock-repo.h"

G_BEGIN_DECLS

/* Names read from the farm once, so that each key typed costs no query. */
typedef struct _SteadLineReader SteadLineReader;

SteadLineReader *stead_line_reader_new  (SteadStore  *store,
                                         GError     **error) G_GNUC_WARN_UNUSED_RESULT;
void             stead_line_reader_free (SteadLineReader *self);
/* What may be typed on this farm, with its flock or group where there are several, in
 * its units: "Say it as you would: Brown hens: 22 eggs, …".  Markup. */
char            *stead_line_reader_hint (const SteadLineReader *self) G_GNUC_WARN_UNUSED_RESULT;
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLineReader, stead_line_reader_free)

/* How a line was understood. */
typedef struct
{
  gboolean         complete;     /* can be recorded as it stands */
  gboolean         is_fish;      /* of a group of fish, not of a flock */
  SteadFlockEntry  entry;        /* eggs, feed, deaths, note, day, person; flock_id is the
                                    batch, that of use_item_id too */
  double           water_c;      /* of fish: temperature of the water; NAN: none */
  gboolean         refused;      /* of fish: they left feed */
  gint64           use_item_id;  /* something else used up: bedding, grit; 0: none */
  double           use_base;
  char            *understood;   /* markup: "Brown hens, today: 22 eggs, 1 of them cracked." or, if not
                                    complete, what is missing or wrong and how to say it */
  int              error_start;  /* byte range of the word that was not understood; -1: none */
  int              error_end;
} SteadLineReading;

void stead_line_reading_free (SteadLineReading *reading);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLineReading, stead_line_reading_free)

SteadLineReading *stead_line_reader_read (SteadLineReader *self,
                                          const char      *line,
                                          SteadDay         today) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (array zero-terminated=1): whole lines that the typed one could
 * become, at most 8: names, then "22 eggs" like words in order of likely use. */
char **stead_line_reader_complete (SteadLineReader *self,
                                   const char      *line) G_GNUC_WARN_UNUSED_RESULT;

/* Records a complete reading as one action with its name. */
gboolean stead_line_reading_record (const SteadLineReading  *reading,
                                    SteadStore              *store,
                                    GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
