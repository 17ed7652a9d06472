/* stead-check-entry-private.h - what the files of an entry share: building and showing, reading. */
#pragma once

#include "app/check/stead-check-entry.h"
#include "app/stead-field.h"

G_BEGIN_DECLS

/* Hours after midnight that still belong to the work of the day before; common practice, no source. */
#define NIGHT_S (5 * 3600)
#define DAY_S 86400

struct _SteadCheckEntry
{
  GtkWidget        parent_instance;

  SteadUnitSystem  units;
  const char      *scale;        /* in which an odd reading was after all: "F", "C"; NULL: not asked */
  gboolean         confirmed;    /* it is as typed, however odd */
  gboolean         on_paper;     /* a list of an earlier day: when and by whom it was read stands on the sheet */
  gboolean         tick;         /* nothing is read but that it was done */
  char            *last_at, *last_who;   /* (nullable): as typed last; they are proposed for the next line */
  gboolean         corrects;     /* a wrong reading, whose time stays if none is typed */
  const char      *other;        /* the other scale than typed */

  SteadField      *value, *held, *at, *who;
  SteadField      *strength, *second;   /* of a sanitizer: how strong; its pH, or how hard the water is */
  GtkWidget       *save, *ask, *as_typed, *otherwise;
  GtkLabel        *question;
};

gboolean stead_check_entry_is_warmth (const SteadListLine *line);

G_END_DECLS
