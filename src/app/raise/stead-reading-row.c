/* stead-reading-row.c - one reading of a water test. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-reading-row.h"

#include "app/stead-focus.h"
#include "app/stead-settings.h"
#include "app/stead-ui.h"

#define KEY_UNITS "reading-units"

struct _SteadReadingRow
{
  GtkWidget        parent_instance;

  SteadReading     reading;
  int              system;      /* of the farm that the units are set for; -1: none yet */
  gboolean         filling;     /* the units are being set, not chosen */
  gboolean         invalid;

  GtkWidget       *grid, *label, *entry, *message;
  GtkDropDown     *unit;        /* (nullable): pH has none */
  GtkWidget       *no_unit;     /* (nullable): keeps its room */
};

enum { CHANGED, ACTIVATE, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadReadingRow, stead_reading_row, GTK_TYPE_WIDGET)

/* --- units ---------------------------------------------------------------------- */

static const SteadReadingUnit *
present_unit (SteadReadingRow *self)
{
  gsize n;
  const SteadReadingUnit *units = stead_reading_units (self->reading, &n);
  guint at = self->unit != NULL ? gtk_drop_down_get_selected (self->unit) : GTK_INVALID_LIST_POSITION;

  return at < n ? &units[at] : NULL;
}

/* The unit that this person's kit showed last time; (transfer full) (nullable). */
static char *
remembered (SteadReading reading)
{
  GSettings *settings = stead_settings_get ();
  g_autoptr(GVariant) units = NULL;
  char *id = NULL;

  if (settings == NULL)
    return NULL;
  units = g_settings_get_value (settings, KEY_UNITS);
  (void) g_variant_lookup (units, stead_reading_id (reading), "s", &id);
  return id;
}

static void
remember (SteadReading reading,
          const char  *id)
{
  GSettings *settings = stead_settings_get ();
  g_autoptr(GVariant) units = NULL;
  GVariantDict all;

  if (settings == NULL)
    return;
  units = g_settings_get_value (settings, KEY_UNITS);
  g_variant_dict_init (&all, NULL);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      const char *kept;

      if (g_variant_lookup (units, stead_reading_id ((SteadReading) i), "&s", &kept))
        g_variant_dict_insert (&all, stead_reading_id ((SteadReading) i), "s", kept);
    }
  g_variant_dict_insert (&all, stead_reading_id (reading), "s", id);
  g_settings_set_value (settings, KEY_UNITS, g_variant_dict_end (&all));
}

static void
unit_chosen_cb (SteadReadingRow *self)
{
  const SteadReadingUnit *unit = present_unit (self);

  if (self->filling || unit == NULL)
    return;
  remember (self->reading, unit->id);
  stead_reading_row_set_error (self, NULL);
  g_signal_emit (self, signals[CHANGED], 0);
}

void
stead_reading_row_set_units (SteadReadingRow *self,
                             SteadUnitSystem  system)
{
  g_autofree char *id = NULL;
  const SteadReadingUnit *unit, *units;
  gsize n;

  g_return_if_fail (STEAD_IS_READING_ROW (self));

  if (self->unit == NULL || (int) system == self->system)
    return;
  self->system = (int) system;
  id = remembered (self->reading);
  unit = stead_reading_unit_by_id (self->reading, id, system);
  units = stead_reading_units (self->reading, &n);
  self->filling = TRUE;
  gtk_drop_down_set_selected (self->unit, (guint) (unit - units));
  self->filling = FALSE;
}

/* --- what is typed ----------------------------------------------------------------- */

static const char *
typed (SteadReadingRow *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

gboolean
stead_reading_row_is_empty (SteadReadingRow *self)
{
  const char *text;

  g_return_val_if_fail (STEAD_IS_READING_ROW (self), TRUE);
  text = typed (self);
  return text[strspn (text, " \t")] == '\0';
}

/* The number as the file keeps it; NAN for nothing. */
static gboolean
parse (SteadReadingRow  *self,
       double           *out,
       GError          **error)
{
  double value;

  *out = NAN;
  if (stead_reading_row_is_empty (self))
    return TRUE;
  if (!stead_number_parse (typed (self), &value, error))
    return FALSE;
  *out = stead_reading_from_unit (value, self->reading, present_unit (self));
  return stead_reading_check (self->reading, *out, error);
}

double
stead_reading_row_peek (SteadReadingRow *self)
{
  double value;

  g_return_val_if_fail (STEAD_IS_READING_ROW (self), NAN);
  return parse (self, &value, NULL) ? value : NAN;
}

gboolean
stead_reading_row_read (SteadReadingRow *self,
                        double          *out)
{
  g_autoptr(GError) error = NULL;

  g_return_val_if_fail (STEAD_IS_READING_ROW (self) && out != NULL, FALSE);

  if (parse (self, out, &error))
    return TRUE;
  stead_reading_row_set_error (self, error->message);
  gtk_widget_grab_focus (self->entry);
  return FALSE;
}

void
stead_reading_row_clear (SteadReadingRow *self)
{
  g_return_if_fail (STEAD_IS_READING_ROW (self));
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  stead_reading_row_set_error (self, NULL);
}

static void
show (SteadReadingRow *self,
      const char      *text)
{
  gboolean says = text != NULL && *text != '\0';

  gtk_label_set_text (GTK_LABEL (self->message), says ? text : "");
  gtk_widget_set_visible (self->message, says);
  if (says)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

void
stead_reading_row_tell (SteadReadingRow *self,
                        const char      *text,
                        gboolean         warns)
{
  g_return_if_fail (STEAD_IS_READING_ROW (self));

  if (self->invalid)
    return;
  show (self, text);
  if (warns)
    gtk_widget_add_css_class (self->message, "warn");
  else
    gtk_widget_remove_css_class (self->message, "warn");
}

void
stead_reading_row_set_error (SteadReadingRow *self,
                             const char      *message)
{
  g_return_if_fail (STEAD_IS_READING_ROW (self));

  self->invalid = message != NULL;
  show (self, message);
  if (self->invalid)
    {
      gtk_widget_add_css_class (GTK_WIDGET (self), "invalid");
      gtk_widget_add_css_class (self->message, "warn");
    }
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "invalid");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               self->invalid ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
entry_changed_cb (SteadReadingRow *self)
{
  if (self->invalid)
    stead_reading_row_set_error (self, NULL);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Half a number is no fault; a number that is left is. */
static void
left_cb (SteadReadingRow *self)
{
  g_autoptr(GError) error = NULL;
  double value;

  if (!parse (self, &value, &error))
    stead_reading_row_set_error (self, error->message);
}

static void
entry_activate_cb (SteadReadingRow *self)
{
  g_signal_emit (self, signals[ACTIVATE], 0);
}

/* --- the type ----------------------------------------------------------------------- */

static gboolean
stead_reading_row_grab_focus (GtkWidget *widget)
{
  return stead_focus_part (widget, STEAD_READING_ROW (widget)->entry);
}

static void
stead_reading_row_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_reading_row_parent_class)->dispose (object);
}

static void
stead_reading_row_class_init (SteadReadingRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_reading_row_dispose;
  widget_class->grab_focus = stead_reading_row_grab_focus;
  signals[CHANGED] = g_signal_new ("changed", STEAD_TYPE_READING_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  signals[ACTIVATE] = g_signal_new ("activate", STEAD_TYPE_READING_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "field");
}

static void
build_entry (SteadReadingRow *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_widget_add_css_class (self->label, "field-label");
  self->entry = gtk_entry_new ();
  /* With the column's 6 as in a compact field; a margin of the label would count in its size group. */
  gtk_widget_set_margin_start (self->entry, 6);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 8);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 1);
  gtk_widget_add_css_class (self->entry, "numeric");
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), self->entry);
  /* Not the relation DESCRIBED_BY as well: from GTK 4.10 on it hides the description that show() sets. */
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->label, NULL, -1);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (entry_changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (entry_activate_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (left_cb), self);
  gtk_widget_add_controller (self->entry, focus);
}

static void
stead_reading_row_init (SteadReadingRow *self)
{
  self->system = -1;
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 6);
  self->message = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->message), 0);
  gtk_label_set_wrap (GTK_LABEL (self->message), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->message), 30);
  gtk_widget_add_css_class (self->message, "small");
  gtk_widget_hide (self->message);
  build_entry (self);
  gtk_grid_attach (GTK_GRID (self->grid), self->label, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), self->entry, 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), self->message, 0, 1, 3, 1);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
}

static void
build_units (SteadReadingRow *self)
{
  g_autoptr(GtkStringList) symbols = gtk_string_list_new (NULL);
  g_autofree char *name = NULL;
  gsize n;
  const SteadReadingUnit *units = stead_reading_units (self->reading, &n);

  if (n == 0)
    {
      self->no_unit = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
      gtk_grid_attach (GTK_GRID (self->grid), self->no_unit, 2, 0, 1, 1);
      return;
    }
  for (gsize i = 0; i < n; i++)
    gtk_string_list_append (symbols, stead_reading_unit_symbol (&units[i]));
  self->unit = GTK_DROP_DOWN (gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&symbols)), NULL));
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (self->unit), 2, 0, 1, 1);
  /* Translators: name of a choice: the unit in which a reading was measured: "Unit of Nitrite". */
  name = g_strdup_printf (_("Unit of %s"), stead_reading_name (self->reading));
  stead_ui_name (GTK_WIDGET (self->unit), name);
  stead_ui_name (gtk_widget_get_first_child (GTK_WIDGET (self->unit)), name);
  g_signal_connect_swapped (self->unit, "notify::selected", G_CALLBACK (unit_chosen_cb), self);
}

GtkWidget *
stead_reading_row_new (SteadReading reading)
{
  SteadReadingRow *self = g_object_new (STEAD_TYPE_READING_ROW, NULL);

  self->reading = reading;
  gtk_label_set_text (GTK_LABEL (self->label), stead_reading_name (reading));
  build_units (self);
  return GTK_WIDGET (self);
}

void
stead_reading_row_share_width (SteadReadingRow *self,
                               GtkSizeGroup    *labels,
                               GtkSizeGroup    *units)
{
  g_return_if_fail (STEAD_IS_READING_ROW (self));
  gtk_size_group_add_widget (labels, self->label);
  gtk_size_group_add_widget (units, self->unit != NULL ? GTK_WIDGET (self->unit) : self->no_unit);
}
