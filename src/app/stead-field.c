/* stead-field.c - a labelled entry that checks what was typed when it is left.
 *
 * Invariants:
 *  1. What was typed is never changed by the field.
 *  2. The message under the field, the class "invalid" and the accessible state
 *     INVALID are there together or not at all.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-core-error.h"
#include "core/stead-money.h"

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
};

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

/* What a field holds, by its kind. */
typedef union
{
  gint64   whole;
  double   number;
  SteadDay day;
} Value;

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
parse (SteadField  *self,
       const char  *text,
       Value       *out,
       GError     **error)
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

/* %TRUE with @out_empty set and @out alone if nothing was typed and nothing must be. */
static gboolean
check_value (SteadField *self,
             Value      *out,
             gboolean   *out_empty)
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
read_value (SteadField *self,
            Value      *out,
            gboolean   *out_empty)
{
  if (check_value (self, out, out_empty))
    return TRUE;
  take_focus (self);
  return FALSE;
}

/* --- what the person does ----------------------------------------------------- */

static void
left_cb (SteadField *self)
{
  Value value;
  gboolean empty;

  /* An empty field is no fault until it is asked for: the person may come back. */
  if (!stead_field_is_empty (self))
    (void) check_value (self, &value, &empty);
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
  return gtk_widget_grab_focus (STEAD_FIELD (widget)->entry);
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
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
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

  self->unit = unit;
  update_name (self);
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

gboolean
stead_field_read_count (SteadField *self,
                        gint64      if_empty,
                        gint64     *out)
{
  Value value = { .whole = if_empty };
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
  Value value = { .number = if_empty };
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
  Value value = { .whole = if_empty };
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
  Value value = { .number = if_empty };
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
  Value value = { .day = if_empty };
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
  Value value;
  gboolean empty;

  g_return_val_if_fail (STEAD_IS_FIELD (self) && self->kind == STEAD_FIELD_TEXT, FALSE);
  if (!read_value (self, &value, &empty))
    return FALSE;
  *out = stead_field_get_text (self);
  return TRUE;
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

  stead_field_set_text (self, text);
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

  stead_field_set_text (self, text);
}

void
stead_field_show_day (SteadField *self,
                      SteadDay    day)
{
  g_autofree char *text = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);

  stead_field_set_text (self, text);
}
