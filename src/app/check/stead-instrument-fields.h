/* stead-instrument-fields.h - what is asked about an instrument: its name, its kind, its scale, how fine it is,
 * and where it hangs. */
#pragma once

#include <gtk/gtk.h>

#include "core/stead-quantity.h"
#include "store/stead-shown-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_INSTRUMENT_FIELDS (stead_instrument_fields_get_type ())
G_DECLARE_FINAL_TYPE (SteadInstrumentFields, stead_instrument_fields, STEAD, INSTRUMENT_FIELDS, GtkWidget)

GtkWidget *stead_instrument_fields_new   (void);
/* Offers the places of @store; what is chosen stays so. */
void       stead_instrument_fields_fill  (SteadInstrumentFields *self, SteadStore *store);
void       stead_instrument_fields_clear (SteadInstrumentFields *self);
/* @us_units: steps and errors of a thermometer are shown and typed in °F. */
void       stead_instrument_fields_show  (SteadInstrumentFields *self,
                                          const SteadInstrument *instrument,
                                          gboolean               us_units);
/* Writes into @instrument what was typed.  Returns: %FALSE if a field already says what is wrong */
gboolean   stead_instrument_fields_read  (SteadInstrumentFields *self,
                                          SteadInstrument       *instrument,
                                          gboolean               us_units) G_GNUC_WARN_UNUSED_RESULT;
/* A refusal, where the name was typed. */
void       stead_instrument_fields_fail  (SteadInstrumentFields *self, const char *text);

G_END_DECLS
