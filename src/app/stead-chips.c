/* stead-chips.c - a row of choices, one of them chosen, and a way to add one.
 *
 * A stop of the Tab key for each chip would be too many, so only the chosen one
 * is focusable and the arrow keys move the choice.
 */
#include "config.h"

#include "app/stead-chips.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

struct _SteadChips
{
  GtkWidget  parent_instance;

  GtkWidget *flow;      /* GtkBox of GtkToggleButton; the last one may add */
  GtkWidget *add;       /* (nullable) GtkButton */
  GPtrArray *chips;     /* of GtkToggleButton, not owned */
  gboolean   quiet;     /* while the code itself chooses */
};

enum { CHOSEN, ADD, N_SIGNALS };
enum { PROP_ADD_LABEL = 1, N_PROPS };

static guint signals[N_SIGNALS];
static GParamSpec *props[N_PROPS];

static void stead_chips_buildable_init (GtkBuildableIface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SteadChips, stead_chips, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_BUILDABLE, stead_chips_buildable_init))

static gint64
chip_id (GtkWidget *chip)
{
  return *(gint64 *) g_object_get_data (G_OBJECT (chip), "id");
}

/* Only the chosen chip takes the Tab key; the first one if none is chosen. */
static void
update_focusable (SteadChips *self)
{
  gboolean any = FALSE;

  for (guint i = 0; i < self->chips->len; i++)
    any |= gtk_toggle_button_get_active (self->chips->pdata[i]);
  for (guint i = 0; i < self->chips->len; i++)
    gtk_widget_set_focusable (self->chips->pdata[i],
                              gtk_toggle_button_get_active (self->chips->pdata[i]) || (!any && i == 0));
}

static void
toggled_cb (SteadChips      *self,
            GtkToggleButton *chip)
{
  update_focusable (self);
  if (self->quiet || !gtk_toggle_button_get_active (chip))
    return;
  gtk_widget_grab_focus (GTK_WIDGET (chip));      /* it could not take it when it was pressed */
  g_signal_emit (self, signals[CHOSEN], 0, chip_id (GTK_WIDGET (chip)));
}

static gboolean
key_cb (SteadChips *self,
        guint       keyval)
{
  GtkWidget *focus = gtk_widget_get_focus_child (self->flow);
  guint at;
  int by = keyval == GDK_KEY_Right || keyval == GDK_KEY_Down ? 1
         : keyval == GDK_KEY_Left || keyval == GDK_KEY_Up ? -1 : 0;

  if (by == 0 || focus == NULL || !g_ptr_array_find (self->chips, focus, &at))
    return GDK_EVENT_PROPAGATE;
  if ((int) at + by < 0 || at + (guint) by >= self->chips->len)
    return GDK_EVENT_STOP;
  gtk_toggle_button_set_active (self->chips->pdata[at + (guint) by], TRUE);
  gtk_widget_grab_focus (self->chips->pdata[at + (guint) by]);
  return GDK_EVENT_STOP;
}

static void
add_cb (SteadChips *self)
{
  g_signal_emit (self, signals[ADD], 0);
}

/* (nullable): the chip that a new one comes after. */
static GtkWidget *
last_chip (SteadChips *self)
{
  return self->chips->len > 0 ? self->chips->pdata[self->chips->len - 1] : NULL;
}

static void
set_add_label (SteadChips *self,
               const char *label)
{
  if (self->add != NULL)
    gtk_box_remove (GTK_BOX (self->flow), self->add);
  self->add = NULL;
  if (label == NULL)
    return;
  self->add = gtk_button_new_with_label (label);
  gtk_widget_add_css_class (self->add, "chip");
  gtk_widget_add_css_class (self->add, "add");
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_insert_child_after (GTK_BOX (self->flow), self->add, last_chip (self));
}

static void
stead_chips_set_property (GObject      *object,
                          guint         id,
                          const GValue *value,
                          GParamSpec   *pspec)
{
  if (id == PROP_ADD_LABEL)
    set_add_label (STEAD_CHIPS (object), g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
stead_chips_dispose (GObject *object)
{
  SteadChips *self = STEAD_CHIPS (object);

  g_clear_pointer (&self->flow, gtk_widget_unparent);
  g_clear_pointer (&self->chips, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_chips_parent_class)->dispose (object);
}

/* What else belongs to the choice stands after the chips, at the far end of their last line. */
static void
stead_chips_add_child (GtkBuildable *buildable,
                       GtkBuilder   *builder,
                       GObject      *child,
                       const char   *type)
{
  gtk_widget_set_halign (GTK_WIDGET (child), GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (STEAD_CHIPS (buildable)->flow), GTK_WIDGET (child));
}

static void
stead_chips_buildable_init (GtkBuildableIface *iface)
{
  iface->add_child = stead_chips_add_child;
}

static void
stead_chips_class_init (SteadChipsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = stead_chips_dispose;
  object_class->set_property = stead_chips_set_property;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);

  props[PROP_ADD_LABEL] = g_param_spec_string ("add-label", NULL, NULL, NULL,
                                               G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[CHOSEN] = g_signal_new ("chosen", STEAD_TYPE_CHIPS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[ADD] = g_signal_new ("add", STEAD_TYPE_CHIPS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
}

static void
stead_chips_init (SteadChips *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->chips = g_ptr_array_new ();
  self->flow = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_set_layout_manager (self->flow, stead_wrap_layout_new ());
  gtk_widget_add_css_class (self->flow, "chips");
  gtk_widget_set_parent (self->flow, GTK_WIDGET (self));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
stead_chips_new (void)
{
  return g_object_new (STEAD_TYPE_CHIPS, NULL);
}

void
stead_chips_clear (SteadChips *self)
{
  g_return_if_fail (STEAD_IS_CHIPS (self));

  for (guint i = 0; i < self->chips->len; i++)
    gtk_box_remove (GTK_BOX (self->flow), self->chips->pdata[i]);
  g_ptr_array_set_size (self->chips, 0);
}

void
stead_chips_append (SteadChips *self,
                    gint64      id,
                    const char *label)
{
  GtkWidget *chip, *text;

  g_return_if_fail (STEAD_IS_CHIPS (self));

  text = gtk_label_new (label);
  gtk_label_set_ellipsize (GTK_LABEL (text), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (text), 34);
  chip = gtk_toggle_button_new ();
  gtk_button_set_child (GTK_BUTTON (chip), text);
  gtk_widget_add_css_class (chip, "chip");
  stead_ui_name (chip, label);
  g_object_set_data_full (G_OBJECT (chip), "id", g_memdup2 (&id, sizeof id), g_free);
  if (self->chips->len > 0)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (chip), self->chips->pdata[0]);
  g_signal_connect_swapped (chip, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_box_insert_child_after (GTK_BOX (self->flow), chip, last_chip (self));
  g_ptr_array_add (self->chips, chip);
  update_focusable (self);
}

void
stead_chips_choose (SteadChips *self,
                    gint64      id)
{
  g_return_if_fail (STEAD_IS_CHIPS (self));

  self->quiet = TRUE;
  for (guint i = 0; i < self->chips->len; i++)
    gtk_toggle_button_set_active (self->chips->pdata[i], chip_id (self->chips->pdata[i]) == id);
  self->quiet = FALSE;
  update_focusable (self);
}

gint64
stead_chips_get (SteadChips *self)
{
  g_return_val_if_fail (STEAD_IS_CHIPS (self), 0);

  for (guint i = 0; i < self->chips->len; i++)
    if (gtk_toggle_button_get_active (self->chips->pdata[i]))
      return chip_id (self->chips->pdata[i]);
  return 0;
}

GtkWidget *
stead_chips_get_add (SteadChips *self)
{
  g_return_val_if_fail (STEAD_IS_CHIPS (self), NULL);
  return self->add;
}
