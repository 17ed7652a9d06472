/* stead-knob-row.c - the field of one knob of the price model.
 *
 * Invariant: text that cannot be read stays as it was typed, with the reason
 * under it, until it is mended or the knob is turned elsewhere.
 */
#include "config.h"

#include "app/price/stead-knob-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/price/stead-knob-words.h"
#include "app/stead-focus.h"
#include "app/stead-ui.h"
#include "core/stead-core-error.h"
#include "core/stead-money.h"
#include "core/stead-quantity.h"

struct _SteadKnobRow
{
  GtkWidget        parent_instance;

  SteadPriceModel *model;
  SteadKnob        knob;

  GtkWidget       *grid;
  GtkWidget       *name;
  GtkWidget       *unit;       /* "a dozen", soft */
  GtkWidget       *spin;
  GtkWidget       *message;
  gboolean         wrong;      /* what was typed last cannot be read */
  gboolean         syncing;    /* while the field follows the model */
};

G_DEFINE_FINAL_TYPE (SteadKnobRow, stead_knob_row, GTK_TYPE_WIDGET)

static const SteadPriceAnswer *
get_answer (SteadKnobRow *self)
{
  return self->model != NULL ? stead_price_model_get_answer (self->model) : NULL;
}

static const char *
get_currency (SteadKnobRow *self)
{
  const SteadPriceAnswer *answer = get_answer (self);

  return answer != NULL ? answer->cost->farm->currency : "USD";
}

/* Message ---------------------------------------------------------------------- */

static void
show_message (SteadKnobRow *self,
              const char   *text)
{
  GtkAccessible *spin = GTK_ACCESSIBLE (self->spin);

  self->wrong = text != NULL;
  gtk_label_set_text (GTK_LABEL (self->message), text != NULL ? text : "");
  gtk_widget_set_visible (self->message, text != NULL);
  if (text != NULL)
    {
      gtk_widget_add_css_class (GTK_WIDGET (self), "invalid");
      gtk_accessible_update_state (spin, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE, -1);
      gtk_accessible_update_property (spin, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
    }
  else if (gtk_widget_has_css_class (GTK_WIDGET (self), "invalid"))
    {
      gtk_widget_remove_css_class (GTK_WIDGET (self), "invalid");
      gtk_accessible_reset_state (spin, GTK_ACCESSIBLE_STATE_INVALID);
      gtk_accessible_reset_property (spin, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
    }
}

/* Reading and writing the text ----------------------------------------------------- */

static gboolean
read_count (const char  *text,
            gint64      *out,
            GError     **error)
{
  double value;

  if (!stead_number_parse (text, &value, error))
    return FALSE;
  if (!(value >= 0 && value <= (double) STEAD_KNOB_MAX_UNITS) || value != floor (value))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Enter a whole number from 0 to a million."));
      return FALSE;
    }
  *out = (gint64) value;
  return TRUE;
}

static gboolean
read_money (SteadKnobRow  *self,
            const char    *text,
            gint64        *out,
            GError       **error)
{
  gint64 cents;

  if (!stead_money_parse (text, get_currency (self), &cents, error))
    return FALSE;
  if (cents < 0 || cents > STEAD_KNOB_MAX_CENTS)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           cents < 0 ? _("Enter an amount of 0 or more.")
                                     : _("This is more than the program reckons with."));
      return FALSE;
    }
  *out = cents;
  return TRUE;
}

static int
input_cb (SteadKnobRow *self,
          double       *value)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->spin));
  g_autoptr(GError) error = NULL;
  gint64 number = 0;
  gboolean good = stead_knob_is_count (self->knob) ? read_count (text, &number, &error)
                                                         : read_money (self, text, &number, &error);

  if (!good)
    {
      show_message (self, error->message);
      return GTK_INPUT_ERROR;
    }
  if (self->wrong)
    show_message (self, NULL);
  *value = (double) number;
  return TRUE;
}

static gboolean
output_cb (SteadKnobRow *self)
{
  gint64 value = llround (gtk_spin_button_get_value (GTK_SPIN_BUTTON (self->spin)));
  g_autofree char *text = NULL;

  if (self->wrong)
    return TRUE;     /* what was typed stays */
  text = stead_knob_is_count (self->knob) ? g_strdup_printf ("%" G_GINT64_FORMAT, value)
                                                : stead_money_format_entry (value, get_currency (self));
  if (g_strcmp0 (text, gtk_editable_get_text (GTK_EDITABLE (self->spin))) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->spin), text);
  return TRUE;
}

static void
value_changed_cb (SteadKnobRow *self)
{
  if (!self->syncing && !self->wrong && self->model != NULL)
    stead_price_model_set (self->model, self->knob,
                           llround (gtk_spin_button_get_value (GTK_SPIN_BUTTON (self->spin))));
}

/* Following the model ----------------------------------------------------------------- */

static void
changed_cb (SteadKnobRow *self)
{
  GtkSpinButton *spin = GTK_SPIN_BUTTON (self->spin);
  gint64 value = stead_price_model_get (self->model, self->knob);

  if (get_answer (self) == NULL)
    return;
  if (value == llround (gtk_spin_button_get_value (spin)))
    return;
  self->syncing = TRUE;
  show_message (self, NULL);
  gtk_spin_button_set_value (spin, (double) value);
  self->syncing = FALSE;
}

static const char *
unit_text (SteadKnobRow *self)
{
  SteadPack pack = get_answer (self)->cost->product->pack;

  switch (self->knob)
    {
    case STEAD_KNOB_PRICE:
    case STEAD_KNOB_UNIT_COST:
      return stead_words_per_unit (pack);
    case STEAD_KNOB_PLANNED:
      return stead_words_unit_plural (pack);
    case STEAD_KNOB_FIXED:
    case STEAD_KNOB_TARGET:
    default:
      return "";
    }
}

static void
set_steps (SteadKnobRow *self)
{
  double step = 1;

  if (!stead_knob_is_count (self->knob) && stead_currency_digits (get_currency (self)) > 0)
    step = self->knob == STEAD_KNOB_PRICE ? 5 : self->knob == STEAD_KNOB_UNIT_COST ? 1 : 100;
  gtk_spin_button_set_increments (GTK_SPIN_BUTTON (self->spin), step, step * 10);
}

static void
loaded_cb (SteadKnobRow *self)
{
  g_autofree char *name = NULL;
  const char *unit;

  if (get_answer (self) == NULL)
    return;
  unit = unit_text (self);
  gtk_label_set_text (GTK_LABEL (self->unit), unit);
  gtk_widget_set_visible (self->unit, *unit != '\0');
  name = *unit != '\0' ? g_strdup_printf ("%s, %s", stead_knob_name (self->knob), unit)
                       : g_strdup (stead_knob_name (self->knob));
  stead_ui_name (self->spin, name);
  set_steps (self);
  self->syncing = TRUE;
  show_message (self, NULL);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->spin),
                             (double) stead_price_model_get (self->model, self->knob));
  output_cb (self);     /* the currency may be another one */
  self->syncing = FALSE;
}

/* Widget --------------------------------------------------------------------------------- */

static gboolean
stead_knob_row_grab_focus (GtkWidget *widget)
{
  return stead_focus_part (widget, STEAD_KNOB_ROW (widget)->spin);
}

static void
stead_knob_row_dispose (GObject *object)
{
  SteadKnobRow *self = STEAD_KNOB_ROW (object);

  if (self->model != NULL)
    g_signal_handlers_disconnect_by_data (self->model, self);
  g_clear_object (&self->model);
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_knob_row_parent_class)->dispose (object);
}

static void
stead_knob_row_class_init (SteadKnobRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_knob_row_dispose;
  widget_class->grab_focus = stead_knob_row_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "field");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
make_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
stead_knob_row_init (SteadKnobRow *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkAdjustment *adjustment = gtk_adjustment_new (0, 0, 1, 1, 10, 0);

  self->name = make_label ("field-label");
  self->unit = make_label ("soft");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), self->name);
  gtk_box_append (GTK_BOX (words), self->unit);
  self->spin = gtk_spin_button_new (adjustment, 1, 0);
  gtk_spin_button_set_update_policy (GTK_SPIN_BUTTON (self->spin), GTK_UPDATE_IF_VALID);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->spin), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->spin), 8);
  gtk_editable_set_alignment (GTK_EDITABLE (self->spin), 1);
  gtk_widget_add_css_class (self->spin, "numeric");
  self->message = make_label ("message");
  gtk_label_set_wrap (GTK_LABEL (self->message), TRUE);
  gtk_widget_set_visible (self->message, FALSE);

  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 12);
  gtk_grid_attach (GTK_GRID (self->grid), words, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), self->spin, 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), self->message, 0, 1, 2, 1);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));

  g_signal_connect_swapped (self->spin, "input", G_CALLBACK (input_cb), self);
  g_signal_connect_swapped (self->spin, "output", G_CALLBACK (output_cb), self);
  g_signal_connect_swapped (self->spin, "value-changed", G_CALLBACK (value_changed_cb), self);
}

GtkWidget *
stead_knob_row_new (SteadPriceModel *model,
                    SteadKnob        knob)
{
  SteadKnobRow *self;

  g_return_val_if_fail (STEAD_IS_PRICE_MODEL (model), NULL);

  self = g_object_new (STEAD_TYPE_KNOB_ROW, NULL);
  self->model = g_object_ref (model);
  self->knob = knob;
  gtk_label_set_text (GTK_LABEL (self->name), stead_knob_name (knob));
  gtk_spin_button_set_range (GTK_SPIN_BUTTON (self->spin), 0,
                             (double) (stead_knob_is_count (knob) ? STEAD_KNOB_MAX_UNITS
                                                                        : STEAD_KNOB_MAX_CENTS));
  g_signal_connect_swapped (model, "loaded", G_CALLBACK (loaded_cb), self);
  g_signal_connect_swapped (model, "changed", G_CALLBACK (changed_cb), self);
  loaded_cb (self);
  return GTK_WIDGET (self);
}
