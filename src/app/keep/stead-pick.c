/* stead-pick.c - a labelled choice of one of several things that have ids. */
#include "config.h"

#include "app/keep/stead-pick.h"

#include "app/stead-ui.h"

struct _SteadPick
{
  GtkWidget      parent_instance;

  GArray        *ids;       /* of gint64, as the names stand that are shown */
  GArray        *next_ids;  /* (nullable): choices that were appended, until they are shown */
  GtkStringList *next;      /* (nullable): their names */
  guint          late;      /* shows them, once the choice of a person is told; 0: nothing waits */
  gint64         late_id;   /* what it chooses then */
  gboolean       filling;   /* the program chooses, not a person */
  gboolean       telling;   /* of the choice of a person */
  GtkWidget     *label, *message;
  GtkDropDown   *choice;
};

G_DEFINE_FINAL_TYPE (SteadPick, stead_pick, GTK_TYPE_WIDGET)

enum { PROP_LABEL = 1, N_PROPS };
static GParamSpec *props[N_PROPS];

enum { CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

static void
selected_cb (SteadPick *self)
{
  if (self->filling)
    return;
  g_object_ref (self);   /* who is told may take it away */
  self->telling = TRUE;
  g_signal_emit (self, signals[CHANGED], 0);
  self->telling = FALSE;
  g_object_unref (self);
}

static void
stead_pick_set_property (GObject      *object,
                         guint         id,
                         const GValue *value,
                         GParamSpec   *pspec)
{
  SteadPick *self = STEAD_PICK (object);

  switch (id)
    {
    case PROP_LABEL:
      gtk_label_set_text (GTK_LABEL (self->label), g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
stead_pick_dispose (GObject *object)
{
  SteadPick *self = STEAD_PICK (object);

  self->filling = TRUE;
  g_clear_handle_id (&self->late, g_source_remove);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->next);
  G_OBJECT_CLASS (stead_pick_parent_class)->dispose (object);
}

static void
stead_pick_finalize (GObject *object)
{
  g_clear_pointer (&STEAD_PICK (object)->ids, g_array_unref);
  g_clear_pointer (&STEAD_PICK (object)->next_ids, g_array_unref);
  G_OBJECT_CLASS (stead_pick_parent_class)->finalize (object);
}

static void
stead_pick_class_init (SteadPickClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->set_property = stead_pick_set_property;
  object_class->dispose = stead_pick_dispose;
  object_class->finalize = stead_pick_finalize;
  props[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, NULL, G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
stead_pick_init (SteadPick *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkExpression *name = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 4);   /* as in a field */
  self->label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  stead_ui_wrap (GTK_LABEL (self->label));
  self->choice = GTK_DROP_DOWN (gtk_drop_down_new (NULL, name));
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), GTK_WIDGET (self->choice));
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (selected_cb), self);
  self->message = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->message), 0);
  stead_ui_wrap (GTK_LABEL (self->message));
  gtk_widget_hide (self->message);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->choice), GTK_WIDGET (self));
  gtk_widget_set_parent (self->message, GTK_WIDGET (self));
}

GtkWidget *
stead_pick_new (const char *label)
{
  return g_object_new (STEAD_TYPE_PICK, "label", label, NULL);
}

/* --- filling it ------------------------------------------------------------------------ */

void
stead_pick_clear (SteadPick *self)
{
  g_return_if_fail (STEAD_IS_PICK (self));

  g_clear_handle_id (&self->late, g_source_remove);
  g_clear_pointer (&self->next_ids, g_array_unref);
  g_clear_object (&self->next);
  self->next_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->next = gtk_string_list_new (NULL);
}

void
stead_pick_append (SteadPick  *self,
                   gint64      id,
                   const char *text)
{
  g_return_if_fail (STEAD_IS_PICK (self));

  if (self->next == NULL)
    stead_pick_clear (self);
  g_array_append_val (self->next_ids, id);
  gtk_string_list_append (self->next, text);
}

static gboolean
is_shown (SteadPick *self)
{
  GListModel *shown = gtk_drop_down_get_model (self->choice);

  if (shown == NULL || self->ids->len != self->next_ids->len)
    return FALSE;
  for (guint i = 0; i < self->ids->len; i++)
    if (g_array_index (self->ids, gint64, i) != g_array_index (self->next_ids, gint64, i)
        || !g_str_equal (gtk_string_list_get_string (GTK_STRING_LIST (shown), i), gtk_string_list_get_string (self->next, i)))
      return FALSE;
  return TRUE;
}

/* Takes what was appended over, if there is something else to choose from now. */
static void
take_next (SteadPick *self)
{
  if (self->next != NULL && !is_shown (self))
    {
      g_clear_pointer (&self->ids, g_array_unref);
      self->ids = g_steal_pointer (&self->next_ids);
      gtk_drop_down_set_model (self->choice, G_LIST_MODEL (self->next));
      gtk_drop_down_set_enable_search (self->choice, self->ids->len > 12);
    }
  g_clear_pointer (&self->next_ids, g_array_unref);
  g_clear_object (&self->next);
}

static void
fill (SteadPick *self,
      gint64     id)
{
  guint at = 0;

  self->filling = TRUE;
  take_next (self);
  for (guint i = 0; i < self->ids->len; i++)
    if (g_array_index (self->ids, gint64, i) == id)
      at = i;
  if (gtk_drop_down_get_selected (self->choice) != at)
    gtk_drop_down_set_selected (self->choice, at);
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  self->filling = FALSE;
}

static gboolean
late_cb (gpointer data)
{
  SteadPick *self = data;

  self->late = 0;
  fill (self, self->late_id);
  return G_SOURCE_REMOVE;
}

/* A list that is exchanged while the toolkit tells of a choice in it may never come to an end (seen in GTK 4.8, where
 * the first of a list with a search was chosen): one that differs waits until that is over. */
void
stead_pick_show (SteadPick *self,
                 gint64     id)
{
  g_return_if_fail (STEAD_IS_PICK (self));

  g_clear_handle_id (&self->late, g_source_remove);
  if (!self->telling || self->next == NULL || is_shown (self))
    {
      fill (self, id);
      return;
    }
  self->late_id = id;
  self->late = g_idle_add (late_cb, self);
}

/* --- what is chosen --------------------------------------------------------------------- */

gint64
stead_pick_get (SteadPick *self)
{
  guint at;

  g_return_val_if_fail (STEAD_IS_PICK (self), 0);

  at = gtk_drop_down_get_selected (self->choice);
  return at < self->ids->len ? g_array_index (self->ids, gint64, at) : 0;
}

guint
stead_pick_count (SteadPick *self)
{
  g_return_val_if_fail (STEAD_IS_PICK (self), 0);
  return self->next_ids != NULL ? self->next_ids->len : self->ids->len;
}

const char *
stead_pick_get_text (SteadPick *self)
{
  guint at;

  g_return_val_if_fail (STEAD_IS_PICK (self), NULL);

  at = gtk_drop_down_get_selected (self->choice);
  return at < self->ids->len ? gtk_string_list_get_string (GTK_STRING_LIST (gtk_drop_down_get_model (self->choice)), at)
                             : NULL;
}

void
stead_pick_say (SteadPick  *self,
                const char *text,
                gboolean    is_wrong)
{
  g_return_if_fail (STEAD_IS_PICK (self));

  stead_ui_tell (GTK_LABEL (self->message), text);
  gtk_widget_remove_css_class (self->message, is_wrong ? "soft" : "warn");
  gtk_widget_add_css_class (self->message, is_wrong ? "warn" : "soft");
}
