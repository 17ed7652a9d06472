/* stead-field.h - a labelled entry that checks what was typed when it is left,
 * and tells what is wrong right under itself; what was typed stays.
 *
 * In a .ui file: <object class="SteadField"><property name="label" translatable="yes">Eggs</property>
 * <property name="kind">count</property></object>
 */
#pragma once

#include <gtk/gtk.h>

#include "core/stead-calendar.h"
#include "core/stead-quantity.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_FIELD_TEXT,
  STEAD_FIELD_COUNT,      /* whole number, 0 or more */
  STEAD_FIELD_NUMBER,
  STEAD_FIELD_PERCENT,    /* typed 5, read 0.05 */
  STEAD_FIELD_MONEY,
  STEAD_FIELD_QUANTITY,   /* with the unit set by stead_field_set_unit() */
  STEAD_FIELD_DAY,
} SteadFieldKind;

GType stead_field_kind_get_type (void);
#define STEAD_TYPE_FIELD_KIND (stead_field_kind_get_type ())

#define STEAD_TYPE_FIELD (stead_field_get_type ())
G_DECLARE_FINAL_TYPE (SteadField, stead_field, STEAD, FIELD, GtkWidget)

/* Properties: "label", "kind", "text", "hint" (shown grey while empty), "required",
 * "currency", "compact" (label left instead of above).  Signals: "activate" (Return),
 * "changed" (each key). */

GtkWidget  *stead_field_new          (const char *label, SteadFieldKind kind);
const char *stead_field_get_text     (SteadField *self);
void        stead_field_set_text     (SteadField *self, const char *text);
void        stead_field_set_currency (SteadField *self, const char *currency);
void        stead_field_set_unit     (SteadField *self, const SteadUnit *unit);
void        stead_field_set_today    (SteadField *self, SteadDay today);
/* How many letters it is made for; a longer text scrolls in it. */
void        stead_field_set_width    (SteadField *self, int chars);
/* Makes the labels of a form's compact fields equally wide, so that its entries stand in line. */
void        stead_field_share_width  (SteadField *self, GtkSizeGroup *group);

/* The error under the field, and the accessible state INVALID; NULL clears it. */
void        stead_field_set_error    (SteadField *self, const char *message);
gboolean    stead_field_has_error    (SteadField *self);
gboolean    stead_field_is_empty     (SteadField *self);

/* Read what was typed: %FALSE shows the message at the field and focuses it, unless
 * another one that is wrong has the focus.  Empty and not required: %TRUE with @if_empty. */
gboolean    stead_field_read_count    (SteadField *self, gint64 if_empty, gint64 *out);
gboolean    stead_field_read_number   (SteadField *self, double if_empty, double *out);
gboolean    stead_field_read_money    (SteadField *self, gint64 if_empty, gint64 *out_cents);
gboolean    stead_field_read_quantity (SteadField *self, double if_empty, double *out_base);
gboolean    stead_field_read_day      (SteadField *self, SteadDay if_empty, SteadDay *out);
gboolean    stead_field_read_text     (SteadField *self, const char **out);   /* required text */

/* Show a value as a person would type it.  While that text stands there, it is read as
 * the very value that was shown, with all its digits: saving a form in which nothing
 * was typed changes nothing. */
void        stead_field_show_count    (SteadField *self, gint64 value);
void        stead_field_show_number   (SteadField *self, double value);
void        stead_field_show_money    (SteadField *self, gint64 cents);
void        stead_field_show_quantity (SteadField *self, double base);
void        stead_field_show_day      (SteadField *self, SteadDay day);
/* The same of a number, a share or an amount in base units whose text is made elsewhere. */
void        stead_field_show_as       (SteadField *self, const char *text, double value);

G_END_DECLS
