/* stead-field.c - a labelled entry that checks what was typed when it is left.
 *
 * Invariants:
 *  1. What was typed is never changed by the field.
 *  2. The message under the field, the class "invalid" and the accessible state
 *     INVALID are there together or not at all.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-field-layout.h"
#include "app/stead-field-private.h"
#include "app/stead-focus.h"
#include "app/stead-ui.h"

enum
{
  PROP_0,
  PROP_LABEL,
  PROP_KIND,
  PROP_TEXT,
  PROP_HINT,
  PROP_REQUIRED,
  PROP_CURRENCY,
  PROP_COMPACT,
  N_PROPS
};

enum
{
  SIGNAL_ACTIVATE,
  SIGNAL_CHANGED,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_ENUM_TYPE (SteadFieldKind, stead_field_kind,
                    G_DEFINE_ENUM_VALUE (STEAD_FIELD_TEXT, "text"),
                    G_DEFINE_ENUM_VALUE (STEAD_FIELD_COUNT, "count"),
                    G_DEFINE_ENUM_VALUE (STEAD_FIELD_NUMBER, "number"),
                    G_DEFINE_ENUM_VALUE (STEAD_FIELD_PERCENT, "percent"),
                    G_DEFINE_ENUM_VALUE (STEAD_FIELD_MONEY, "money"),
                    G_DEFINE_ENUM_VALUE (STEAD_FIELD_QUANTITY, "quantity"),
                    G_DEFINE_ENUM_VALUE (STEAD_FIELD_DAY, "day"))

G_DEFINE_FINAL_TYPE (SteadField, stead_field, GTK_TYPE_WIDGET)

static gboolean
is_number (SteadField *self)
{
  return self->kind != STEAD_FIELD_TEXT && self->kind != STEAD_FIELD_DAY;
}

/* "Feed given, lb": the label with its unit, if it has one. */
static char *
full_name (SteadField *self)
{
  const char *name = self->name != NULL ? self->name : "";

  if (self->kind == STEAD_FIELD_QUANTITY && self->unit != NULL)
    /* Translators: label of a field and the unit that a bare number is read in: "Feed given, lb". */
    return g_strdup_printf (C_("field with unit", "%s, %s"), name, stead_unit_symbol (self->unit));
  if (self->kind == STEAD_FIELD_PERCENT)
    /* Translators: label of a field whose number is a percentage. */
    return g_strdup_printf (C_("field in percent", "%s, %%"), name);
  return g_strdup (name);
}

/* The entry is called what its label says, through the label's relation to it. */
static void
update_name (SteadField *self)
{
  g_autofree char *name = full_name (self);

  gtk_label_set_text_with_mnemonic (GTK_LABEL (self->label), name);
  gtk_widget_set_visible (self->label, *name != '\0');
}

static void
place (SteadField *self,
       GtkWidget  *child,
       int         column,
       int         row)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (self->grid);

  g_object_set (gtk_layout_manager_get_layout_child (layout, child), "column", column, "row", row, NULL);
}

/* Label above, or left of the entry; the message is always right under the entry. */
static void
arrange (SteadField *self)
{
  int column = self->compact ? 1 : 0;

  place (self, self->entry, column, self->compact ? 0 : 1);
  place (self, self->message, column, self->compact ? 1 : 2);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), self->compact ? 12 : 0);
  gtk_label_set_wrap (GTK_LABEL (self->label), !self->compact);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), self->compact && is_number (self) ? 1 : 0);
}

static void
apply_kind (SteadField *self)
{
  gboolean digits = self->kind == STEAD_FIELD_COUNT;

  gtk_entry_set_input_purpose (GTK_ENTRY (self->entry),
                               digits ? GTK_INPUT_PURPOSE_DIGITS : GTK_INPUT_PURPOSE_FREE_FORM);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), self->kind == STEAD_FIELD_TEXT && !self->compact ? 14 : 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), self->kind == STEAD_FIELD_TEXT && !self->compact ? 24 : 12);
  if (is_number (self))
    gtk_widget_add_css_class (self->entry, "numeric");
  else
    gtk_widget_remove_css_class (self->entry, "numeric");
  update_name (self);
  arrange (self);
}

/* --- what the person does ----------------------------------------------------- */

static void
left_cb (SteadField *self)
{
  SteadFieldValue value;
  gboolean empty;

  /* An empty field is no fault until it is asked for: the person may come back. */
  if (!stead_field_is_empty (self))
    (void) stead_field_check (self, &value, &empty);
}

static void
entry_changed_cb (SteadField *self)
{
  /* A message that no longer fits what stands there would mislead. */
  if (stead_field_has_error (self))
    stead_field_set_error (self, NULL);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TEXT]);
}

static void
entry_activate_cb (SteadField *self)
{
  g_signal_emit (self, signals[SIGNAL_ACTIVATE], 0);
}

/* --- the object ---------------------------------------------------------------- */

static gboolean
stead_field_grab_focus (GtkWidget *widget)
{
  return stead_focus_part (widget, STEAD_FIELD (widget)->entry);
}

static void
stead_field_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_field_parent_class)->dispose (object);
}

static void
stead_field_finalize (GObject *object)
{
  SteadField *self = STEAD_FIELD (object);

  g_free (self->name);
  g_free (self->hint);
  g_free (self->currency);
  g_free (self->shown);
  G_OBJECT_CLASS (stead_field_parent_class)->finalize (object);
}

static void
stead_field_get_property (GObject    *object,
                          guint       id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  SteadField *self = STEAD_FIELD (object);

  switch (id)
    {
    case PROP_LABEL:    g_value_set_string (value, self->name); break;
    case PROP_KIND:     g_value_set_enum (value, self->kind); break;
    case PROP_TEXT:     g_value_set_string (value, stead_field_get_text (self)); break;
    case PROP_HINT:     g_value_set_string (value, self->hint); break;
    case PROP_REQUIRED: g_value_set_boolean (value, self->required); break;
    case PROP_CURRENCY: g_value_set_string (value, self->currency); break;
    case PROP_COMPACT:  g_value_set_boolean (value, self->compact); break;
    default:            G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
set_hint (SteadField *self,
          const char *hint)
{
  g_free (self->hint);
  self->hint = g_strdup (hint);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), hint);
}

static void
set_required (SteadField *self,
              gboolean    required)
{
  self->required = required;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry),
                                  GTK_ACCESSIBLE_PROPERTY_REQUIRED, required, -1);
}

static void
stead_field_set_property (GObject      *object,
                          guint         id,
                          const GValue *value,
                          GParamSpec   *pspec)
{
  SteadField *self = STEAD_FIELD (object);

  switch (id)
    {
    case PROP_LABEL:
      g_free (self->name);
      self->name = g_value_dup_string (value);
      update_name (self);
      break;
    case PROP_KIND:
      self->kind = g_value_get_enum (value);
      apply_kind (self);
      break;
    case PROP_TEXT:
      stead_field_set_text (self, g_value_get_string (value));
      break;
    case PROP_HINT:
      set_hint (self, g_value_get_string (value));
      break;
    case PROP_REQUIRED:
      set_required (self, g_value_get_boolean (value));
      break;
    case PROP_CURRENCY:
      stead_field_set_currency (self, g_value_get_string (value));
      break;
    case PROP_COMPACT:
      self->compact = g_value_get_boolean (value);
      arrange (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
stead_field_class_init (SteadFieldClass *klass)
{
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = stead_field_dispose;
  object_class->finalize = stead_field_finalize;
  object_class->get_property = stead_field_get_property;
  object_class->set_property = stead_field_set_property;
  widget_class->grab_focus = stead_field_grab_focus;

  props[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, NULL, flags);
  props[PROP_KIND] = g_param_spec_enum ("kind", NULL, NULL, STEAD_TYPE_FIELD_KIND, STEAD_FIELD_TEXT, flags);
  props[PROP_TEXT] = g_param_spec_string ("text", NULL, NULL, "", flags | G_PARAM_EXPLICIT_NOTIFY);
  props[PROP_HINT] = g_param_spec_string ("hint", NULL, NULL, NULL, flags);
  props[PROP_REQUIRED] = g_param_spec_boolean ("required", NULL, NULL, FALSE, flags);
  props[PROP_CURRENCY] = g_param_spec_string ("currency", NULL, NULL, "USD", flags);
  props[PROP_COMPACT] = g_param_spec_boolean ("compact", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[SIGNAL_ACTIVATE] = g_signal_new ("activate", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                           NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                          NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, STEAD_TYPE_FIELD_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "field");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
make_message (SteadField *self)
{
  GtkWidget *image = gtk_image_new_from_icon_name ("dialog-warning-symbolic");

  gtk_accessible_update_state (GTK_ACCESSIBLE (image), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  stead_ui_name (image, _("Wrong"));
  gtk_widget_set_valign (image, GTK_ALIGN_START);
  self->message = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_add_css_class (self->message, "message");
  self->message_text = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->message_text), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->message_text), 0);
  gtk_label_set_width_chars (GTK_LABEL (self->message_text), 16);
  gtk_label_set_max_width_chars (GTK_LABEL (self->message_text), 24);
  gtk_widget_set_hexpand (self->message_text, TRUE);
  gtk_box_append (GTK_BOX (self->message), image);
  gtk_box_append (GTK_BOX (self->message), self->message_text);
  gtk_widget_set_visible (self->message, FALSE);
}

static void
stead_field_init (SteadField *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->currency = g_strdup ("USD");
  self->today = STEAD_DAY_NONE;
  self->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 4);
  self->label = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->label, "field-label");
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  self->entry = gtk_entry_new ();
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), self->entry);
  make_message (self);
  gtk_grid_attach (GTK_GRID (self->grid), self->label, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), self->entry, 0, 1, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), self->message, 0, 2, 1, 1);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  apply_kind (self);

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (left_cb), self);
  gtk_widget_add_controller (self->entry, focus);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (entry_changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (entry_activate_cb), self);
}

GtkWidget *
stead_field_new (const char     *label,
                 SteadFieldKind  kind)
{
  return g_object_new (STEAD_TYPE_FIELD, "label", label, "kind", kind, NULL);
}

const char *
stead_field_get_text (SteadField *self)
{
  g_return_val_if_fail (STEAD_IS_FIELD (self), "");
  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

/**
 * stead_field_set_text:
 * @text: (nullable): replaces what stands there; clears the message
 */
void
stead_field_set_text (SteadField *self,
                      const char *text)
{
  g_return_if_fail (STEAD_IS_FIELD (self));

  stead_field_set_error (self, NULL);
  g_clear_pointer (&self->shown, g_free);
  if (g_strcmp0 (text != NULL ? text : "", stead_field_get_text (self)) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text != NULL ? text : "");
}

void
stead_field_set_currency (SteadField *self,
                          const char *currency)
{
  g_return_if_fail (STEAD_IS_FIELD (self));
  g_return_if_fail (currency != NULL);

  g_free (self->currency);
  self->currency = g_strdup (currency);
}

/**
 * stead_field_set_unit:
 * @unit: (nullable): of a bare number; its dimension is what may be typed
 */
void
stead_field_set_unit (SteadField      *self,
                      const SteadUnit *unit)
{
  g_return_if_fail (STEAD_IS_FIELD (self));

  if (self->unit != unit)
    g_clear_pointer (&self->shown, g_free);
  self->unit = unit;
  update_name (self);
}

void
stead_field_set_width (SteadField *self,
                       int         chars)
{
  g_return_if_fail (STEAD_IS_FIELD (self) && chars > 0);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), chars);
}

void
stead_field_share_width (SteadField   *self,
                         GtkSizeGroup *group)
{
  g_return_if_fail (STEAD_IS_FIELD (self));
  gtk_size_group_add_widget (group, self->label);
}

void
stead_field_set_today (SteadField *self,
                       SteadDay    today)
{
  g_return_if_fail (STEAD_IS_FIELD (self));
  self->today = today;
}

void
stead_field_set_error (SteadField *self,
                       const char *message)
{
  GtkAccessible *entry;

  g_return_if_fail (STEAD_IS_FIELD (self));

  entry = GTK_ACCESSIBLE (self->entry);
  gtk_widget_set_visible (self->message, message != NULL);
  gtk_label_set_text (GTK_LABEL (self->message_text), message != NULL ? message : "");
  if (message != NULL)
    {
      gtk_widget_add_css_class (GTK_WIDGET (self), "invalid");
      gtk_accessible_update_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE, -1);
      /* Not the relation ERROR_MESSAGE: GTK 4.8 crashes on it with a screen reader. */
      gtk_accessible_update_property (entry, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, message, -1);
    }
  else if (gtk_widget_has_css_class (GTK_WIDGET (self), "invalid"))
    {
      gtk_widget_remove_css_class (GTK_WIDGET (self), "invalid");
      gtk_accessible_reset_state (entry, GTK_ACCESSIBLE_STATE_INVALID);
      gtk_accessible_reset_property (entry, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
    }
}

gboolean
stead_field_has_error (SteadField *self)
{
  g_return_val_if_fail (STEAD_IS_FIELD (self), FALSE);
  return gtk_widget_has_css_class (GTK_WIDGET (self), "invalid");
}

gboolean
stead_field_is_empty (SteadField *self)
{
  const char *text;

  g_return_val_if_fail (STEAD_IS_FIELD (self), TRUE);

  text = stead_field_get_text (self);
  while (g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  return *text == '\0';
}
