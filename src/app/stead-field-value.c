/* stead-field-value.c - a field's text as a value of its kind, read and shown. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-field-private.h"
#include "core/stead-core-error.h"
#include "core/stead-money.h"

/* --- reading what was typed -------------------------------------------------- */

static gboolean
parse_count (const char  *text,
             gint64      *out,
             GError     **error)
{
  double number;

  if (!stead_number_parse (text, &number, error))
    return FALSE;
  if (!(number >= 0 && number <= 1e9) || number != (double) (gint64) number)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Enter a whole number, 0 or more."));
      return FALSE;
    }
  *out = (gint64) number;
  return TRUE;
}

static gboolean
parse_percent (const char  *text,
               double      *out,
               GError     **error)
{
  g_autofree char *bare = g_strdup (text);
  char *sign = strchr (bare, '%');
  double number;

  if (sign != NULL && g_strstrip (sign + 1)[0] == '\0')
    *sign = '\0';
  if (!stead_number_parse (bare, &number, error))
    return FALSE;
  *out = number / 100;
  return TRUE;
}

static gboolean
parse_day (SteadField  *self,
           const char  *text,
           SteadDay    *out,
           GError     **error)
{
  return stead_day_parse (text, self->today, stead_date_order_from_locale (), out, error);
}

/* Reads text that is not empty. */
static gboolean
parse (SteadField       *self,
       const char       *text,
       SteadFieldValue  *out,
       GError          **error)
{
  const SteadUnit *unit = self->unit != NULL ? self->unit : stead_unit_by_id ("ea");

  switch (self->kind)
    {
    case STEAD_FIELD_COUNT:
      return parse_count (text, &out->whole, error);
    case STEAD_FIELD_NUMBER:
      return stead_number_parse (text, &out->number, error);
    case STEAD_FIELD_PERCENT:
      return parse_percent (text, &out->number, error);
    case STEAD_FIELD_MONEY:
      return stead_money_parse (text, self->currency, &out->whole, error);
    case STEAD_FIELD_QUANTITY:
      return stead_quantity_parse (text, unit->dimension, unit, &out->number, NULL, error);
    case STEAD_FIELD_DAY:
      return parse_day (self, text, &out->day, error);
    case STEAD_FIELD_TEXT:
    default:
      return TRUE;
    }
}

/* Nobody typed over it since. */
static gboolean
stands_as_shown (SteadField *self)
{
  return self->shown != NULL && g_str_equal (self->shown, stead_field_get_text (self));
}

gboolean
stead_field_check (SteadField      *self,
                   SteadFieldValue *out,
                   gboolean        *out_empty)
{
  g_autoptr(GError) error = NULL;

  *out_empty = stead_field_is_empty (self);
  if (*out_empty && self->required)
    {
      stead_field_set_error (self, _("Please fill this in."));
      return FALSE;
    }
  if (!*out_empty && !parse (self, stead_field_get_text (self), out, &error))
    {
      stead_field_set_error (self, error->message);
      return FALSE;
    }
  if (!*out_empty && stands_as_shown (self))
    out->number = self->shown_number;
  stead_field_set_error (self, NULL);
  return TRUE;
}

/* Of several fields that are wrong the first one gets the focus. */
static void
take_focus (SteadField *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  GtkWidget *field = focus != NULL ? gtk_widget_get_ancestor (focus, STEAD_TYPE_FIELD) : NULL;

  if (root != NULL && (field == NULL || !stead_field_has_error (STEAD_FIELD (field))))
    gtk_widget_grab_focus (self->entry);
}

static gboolean
read_value (SteadField      *self,
            SteadFieldValue *out,
            gboolean        *out_empty)
{
  if (stead_field_check (self, out, out_empty))
    return TRUE;
  take_focus (self);
  return FALSE;
}

gboolean
stead_field_read_count (SteadField *self,
                        gint64      if_empty,
                        gint64     *out)
{
  SteadFieldValue value = { .whole = if_empty };
  gboolean empty;

  g_return_val_if_fail (STEAD_IS_FIELD (self) && self->kind == STEAD_FIELD_COUNT, FALSE);
  if (!read_value (self, &value, &empty))
    return FALSE;
  *out = value.whole;
  return TRUE;
}

gboolean
stead_field_read_number (SteadField *self,
                         double      if_empty,
                         double     *out)
{
  SteadFieldValue value = { .number = if_empty };
  gboolean empty;

  g_return_val_if_fail (STEAD_IS_FIELD (self), FALSE);
  g_return_val_if_fail (self->kind == STEAD_FIELD_NUMBER || self->kind == STEAD_FIELD_PERCENT, FALSE);
  if (!read_value (self, &value, &empty))
    return FALSE;
  *out = value.number;
  return TRUE;
}

gboolean
stead_field_read_money (SteadField *self,
                        gint64      if_empty,
                        gint64     *out_cents)
{
  SteadFieldValue value = { .whole = if_empty };
  gboolean empty;

  g_return_val_if_fail (STEAD_IS_FIELD (self) && self->kind == STEAD_FIELD_MONEY, FALSE);
  if (!read_value (self, &value, &empty))
    return FALSE;
  *out_cents = value.whole;
  return TRUE;
}

gboolean
stead_field_read_quantity (SteadField *self,
                           double      if_empty,
                           double     *out_base)
{
  SteadFieldValue value = { .number = if_empty };
  gboolean empty;

  g_return_val_if_fail (STEAD_IS_FIELD (self) && self->kind == STEAD_FIELD_QUANTITY, FALSE);
  if (!read_value (self, &value, &empty))
    return FALSE;
  *out_base = value.number;
  return TRUE;
}

gboolean
stead_field_read_day (SteadField *self,
                      SteadDay    if_empty,
                      SteadDay   *out)
{
  SteadFieldValue value = { .day = if_empty };
  gboolean empty;

  g_return_val_if_fail (STEAD_IS_FIELD (self) && self->kind == STEAD_FIELD_DAY, FALSE);
  if (!read_value (self, &value, &empty))
    return FALSE;
  *out = value.day;
  return TRUE;
}

/**
 * stead_field_read_text:
 * @out: (out) (transfer none): what was typed, valid until it changes
 */
gboolean
stead_field_read_text (SteadField  *self,
                       const char **out)
{
  SteadFieldValue value;
  gboolean empty;

  g_return_val_if_fail (STEAD_IS_FIELD (self) && self->kind == STEAD_FIELD_TEXT, FALSE);
  if (!read_value (self, &value, &empty))
    return FALSE;
  *out = stead_field_get_text (self);
  return TRUE;
}

/* --- what stands in the field ---------------------------------------------------- */

/* @reads: whether the field reads such a number, rather than pieces or a text */
static void
show (SteadField *self,
      const char *text,
      double      number,
      gboolean    reads)
{
  stead_field_set_text (self, text);
  if (!reads)
    return;
  self->shown = g_strdup (text);
  self->shown_number = number;
}

static gboolean
reads_number (SteadField *self)
{
  return self->kind == STEAD_FIELD_NUMBER || self->kind == STEAD_FIELD_PERCENT;
}

void
stead_field_show_count (SteadField *self,
                        gint64      value)
{
  g_autofree char *text = g_strdup_printf ("%" G_GINT64_FORMAT, value);

  stead_field_set_text (self, text);
}

void
stead_field_show_number (SteadField *self,
                         double      value)
{
  g_autofree char *text = stead_number_format (self->kind == STEAD_FIELD_PERCENT ? value * 100 : value, 6);

  show (self, text, value, reads_number (self));
}

void
stead_field_show_money (SteadField *self,
                        gint64      cents)
{
  g_autofree char *text = stead_money_format_entry (cents, self->currency);

  stead_field_set_text (self, text);
}

void
stead_field_show_quantity (SteadField *self,
                           double      base)
{
  const SteadUnit *unit = self->unit != NULL ? self->unit : stead_unit_by_id ("ea");
  g_autofree char *text = stead_number_format (stead_quantity_from_base (base, unit), 4);

  show (self, text, base, self->kind == STEAD_FIELD_QUANTITY);
}

void
stead_field_show_day (SteadField *self,
                      SteadDay    day)
{
  g_autofree char *text = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);

  stead_field_set_text (self, text);
}

void
stead_field_show_as (SteadField *self,
                     const char *text,
                     double      value)
{
  g_return_if_fail (STEAD_IS_FIELD (self) && text != NULL);
  g_return_if_fail (reads_number (self) || self->kind == STEAD_FIELD_QUANTITY);

  show (self, text, value, TRUE);
}
