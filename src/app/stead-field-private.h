/* stead-field-private.h - the field, for the two files that make it: its widget, and
 * what is read from it and shown in it.
 */
#pragma once

#include "app/stead-field.h"

G_BEGIN_DECLS

struct _SteadField
{
  GtkWidget        parent_instance;

  GtkWidget       *grid;
  GtkWidget       *label;
  GtkWidget       *entry;
  GtkWidget       *message;       /* a box: symbol and words */
  GtkWidget       *message_text;

  char            *name;          /* as given, with its mnemonic */
  char            *hint;
  char            *currency;
  SteadFieldKind   kind;
  const SteadUnit *unit;          /* (nullable) */
  SteadDay         today;
  gboolean         required;
  gboolean         compact;

  /* A text is shorter than what it stands for: 9.3 m² are "100.1044" sq ft. */
  char            *shown;         /* (nullable): the text as the program put it there */
  double           shown_number;
};

/* What a field holds, by its kind. */
typedef union
{
  gint64   whole;
  double   number;
  SteadDay day;
} SteadFieldValue;

/* Reads what was typed and says under the field what is wrong with it.  %TRUE with
 * @out_empty set and @out alone if nothing was typed and nothing must be. */
gboolean stead_field_check (SteadField      *self,
                            SteadFieldValue *out,
                            gboolean        *out_empty);

G_END_DECLS
