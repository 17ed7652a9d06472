/* stead-picture-box.c - pictures of a paper: looked at, chosen, taken off. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-picture-box.h"

#include "app/stead-files.h"
#include "app/stead-picture.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "store/stead-batch-repo.h"

#define SMALL_SIDE 110   /* px of a picture in the row */

typedef struct
{
  gint64        id;       /* in the farm; 0: new */
  SteadPicture *chosen;   /* (nullable): the new one */
  GBytes       *jpeg;
  GtkWidget    *widget;   /* not owned */
} Entry;

struct _SteadPictureBox
{
  GtkWidget     parent_instance;

  gboolean      many;
  GPtrArray    *entries;   /* of Entry */
  GCancellable *reading;   /* (nullable): a picture is on its way */

  GtkWidget    *row, *choose, *spinner, *trouble;
};

G_DEFINE_FINAL_TYPE (SteadPictureBox, stead_picture_box, GTK_TYPE_WIDGET)

enum { PROP_MANY = 1, N_PROPS };
static GParamSpec *props[N_PROPS];

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  g_clear_pointer (&entry->chosen, stead_picture_free);
  g_clear_pointer (&entry->jpeg, g_bytes_unref);
  g_free (entry);
}

static void
show_trouble (SteadPictureBox *self,
              const char      *text)
{
  stead_ui_tell (GTK_LABEL (self->trouble), text);
}

/* --- one picture ------------------------------------------------------------------------ */

static void
show_state (SteadPictureBox *self)
{
  gtk_button_set_label (GTK_BUTTON (self->choose),
                        self->entries->len == 0 ? _("Choose a picture…")
                        : self->many ? _("Add a picture…") : _("Choose another picture…"));
  gtk_widget_set_visible (self->row, self->entries->len > 0);
}

static Entry *
entry_of (SteadPictureBox *self,
          GtkWidget       *widget)
{
  for (guint i = 0; i < self->entries->len; i++)
    if (((Entry *) self->entries->pdata[i])->widget == widget)
      return self->entries->pdata[i];
  return NULL;
}

static void
drop_entry (SteadPictureBox *self,
            Entry           *entry)
{
  gtk_widget_unparent (entry->widget);
  g_ptr_array_remove (self->entries, entry);
  show_state (self);
}

static void
drop_cb (SteadPictureBox *self,
         GtkWidget       *button)
{
  Entry *entry = entry_of (self, gtk_widget_get_parent (button));

  gtk_widget_grab_focus (self->choose);
  if (entry != NULL)
    drop_entry (self, entry);
}

/* The whole picture, in a window of its own. */
static void
open_cb (SteadPictureBox *self,
         GtkWidget       *button)
{
  Entry *entry = entry_of (self, gtk_widget_get_parent (button));
  g_autoptr(GdkTexture) texture = entry != NULL ? gdk_texture_new_from_bytes (entry->jpeg, NULL) : NULL;
  GtkWidget *window, *picture;

  if (texture == NULL)
    return;
  window = gtk_window_new ();
  picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  gtk_picture_set_alternative_text (GTK_PICTURE (picture), _("Picture of the paper"));
  gtk_window_set_title (GTK_WINDOW (window), _("Picture of the paper"));
  gtk_window_set_transient_for (GTK_WINDOW (window), GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))));
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), 720, 560);
  gtk_window_set_child (GTK_WINDOW (window), picture);
  gtk_widget_add_css_class (window, "steading");
  {
    GtkEventController *keys = gtk_shortcut_controller_new ();

    gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                          gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                            gtk_named_action_new ("window.close")));
    gtk_widget_add_controller (window, keys);
  }
  gtk_window_present (GTK_WINDOW (window));
}

static GtkWidget *
make_widget (SteadPictureBox *self,
             GdkTexture      *texture)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *look = gtk_button_new ();
  GtkWidget *picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  GtkWidget *drop = gtk_button_new_with_label (_("Take it off"));

  gtk_picture_set_can_shrink (GTK_PICTURE (picture), TRUE);
  gtk_picture_set_alternative_text (GTK_PICTURE (picture), _("Picture of the paper"));
  gtk_widget_set_size_request (picture, SMALL_SIDE, SMALL_SIDE);
  gtk_button_set_child (GTK_BUTTON (look), picture);
  gtk_widget_add_css_class (look, "tile");
  gtk_widget_set_tooltip_text (look, _("Look at the whole picture"));
  stead_ui_name (look, _("Look at the whole picture"));
  g_signal_connect_swapped (look, "clicked", G_CALLBACK (open_cb), self);
  gtk_widget_add_css_class (drop, "quiet");
  gtk_widget_add_css_class (drop, "small");
  g_signal_connect_swapped (drop, "clicked", G_CALLBACK (drop_cb), self);
  gtk_box_append (GTK_BOX (box), look);
  gtk_box_append (GTK_BOX (box), drop);
  return box;
}

/* Takes @chosen over. */
static void
add_entry (SteadPictureBox *self,
           gint64           id,
           SteadPicture    *chosen,
           GBytes          *jpeg)
{
  g_autoptr(GdkTexture) texture = gdk_texture_new_from_bytes (jpeg, NULL);
  Entry *entry = g_new0 (Entry, 1);

  entry->id = id;
  entry->chosen = chosen;
  entry->jpeg = g_bytes_ref (jpeg);
  if (!self->many && self->entries->len > 0)
    drop_entry (self, self->entries->pdata[0]);
  /* One that cannot be shown stays all the same: it is not ours to throw away. */
  entry->widget = make_widget (self, texture);
  gtk_widget_set_parent (entry->widget, self->row);
  g_ptr_array_add (self->entries, entry);
  show_state (self);
}

/* --- choosing --------------------------------------------------------------------------- */

static void
set_reading (SteadPictureBox *self,
             GCancellable    *reading)
{
  g_set_object (&self->reading, reading);
  gtk_widget_set_sensitive (self->choose, reading == NULL);
  if (reading != NULL)
    gtk_spinner_start (GTK_SPINNER (self->spinner));
  else
    gtk_spinner_stop (GTK_SPINNER (self->spinner));
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr(SteadPictureBox) self = data;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPicture) picture = stead_picture_read_finish (result, &error);
  GBytes *jpeg;

  /* A box that was closed meanwhile has nothing left to show it in. */
  if (self->reading == NULL || g_task_get_cancellable (G_TASK (result)) != self->reading)
    return;
  set_reading (self, NULL);
  show_trouble (self, picture == NULL ? error->message : NULL);
  if (picture == NULL)
    return;
  jpeg = picture->jpeg;
  add_entry (self, 0, g_steal_pointer (&picture), jpeg);
}

static void
chosen_cb (const char *path,
           gpointer    data)
{
  g_autoptr(SteadPictureBox) self = data;
  g_autoptr(GCancellable) reading = NULL;

  if (path == NULL || self->entries == NULL)
    return;
  reading = g_cancellable_new ();
  set_reading (self, reading);
  show_trouble (self, NULL);
  stead_picture_read_async (path, reading, read_cb, g_object_ref (self));
}

static void
choose_cb (SteadPictureBox *self)
{
  stead_files_open (GTK_WIDGET (self), _("Choose a picture"), NULL, NULL, chosen_cb, g_object_ref (self));
}

/* --- the widget --------------------------------------------------------------------------- */

static void
stead_picture_box_set_property (GObject      *object,
                                guint         id,
                                const GValue *value,
                                GParamSpec   *pspec)
{
  switch (id)
    {
    case PROP_MANY:
      STEAD_PICTURE_BOX (object)->many = g_value_get_boolean (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
stead_picture_box_dispose (GObject *object)
{
  SteadPictureBox *self = STEAD_PICTURE_BOX (object);

  if (self->reading != NULL)
    g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  g_clear_pointer (&self->entries, g_ptr_array_unref);
  if (self->row != NULL)
    stead_ui_drop_children (self->row);
  self->row = NULL;
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_picture_box_parent_class)->dispose (object);
}

static void
stead_picture_box_class_init (SteadPictureBoxClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->set_property = stead_picture_box_set_property;
  object_class->dispose = stead_picture_box_dispose;
  props[PROP_MANY] = g_param_spec_boolean ("many", NULL, NULL, FALSE, G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static GtkWidget *
add_words (SteadPictureBox *self,
           const char      *text,
           const char      *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  stead_ui_wrap (GTK_LABEL (label));
  gtk_widget_add_css_class (label, css_class);
  gtk_widget_set_parent (label, GTK_WIDGET (self));
  return label;
}

static void
stead_picture_box_init (SteadPictureBox *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->entries = g_ptr_array_new_with_free_func (entry_free);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->row = g_object_new (GTK_TYPE_BOX, "layout-manager", stead_wrap_layout_new (), NULL);
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  self->choose = gtk_button_new_with_label ("");
  g_signal_connect_swapped (self->choose, "clicked", G_CALLBACK (choose_cb), self);
  self->spinner = gtk_spinner_new ();
  gtk_box_append (GTK_BOX (buttons), self->choose);
  gtk_box_append (GTK_BOX (buttons), self->spinner);
  gtk_widget_set_parent (buttons, GTK_WIDGET (self));
  self->trouble = add_words (self, NULL, "warn");
  gtk_widget_add_css_class (add_words (self, _("A scan or a photo. It is made smaller and kept in the farm file."), "soft"),
                            "small");
  show_trouble (self, NULL);
  show_state (self);
}

void
stead_picture_box_add (SteadPictureBox *self,
                       SteadStore      *store,
                       gint64           picture_id)
{
  g_autoptr(GBytes) jpeg = NULL;

  g_return_if_fail (STEAD_IS_PICTURE_BOX (self));

  jpeg = picture_id != 0 ? stead_picture_repo_get (store, picture_id, NULL) : NULL;
  if (jpeg != NULL)
    add_entry (self, picture_id, NULL, jpeg);
}

gboolean
stead_picture_box_is_ready (SteadPictureBox *self)
{
  g_return_val_if_fail (STEAD_IS_PICTURE_BOX (self), FALSE);

  if (self->reading != NULL)
    show_trouble (self, _("The picture is still being read. Save again in a moment."));
  return self->reading == NULL;
}

void
stead_picture_box_take (SteadPictureBox *self,
                        const char      *path)
{
  g_return_if_fail (STEAD_IS_PICTURE_BOX (self) && path != NULL);
  chosen_cb (path, g_object_ref (self));
}

GArray *
stead_picture_box_save (SteadPictureBox  *self,
                        SteadStore       *store,
                        GError          **error)
{
  g_autoptr(GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));

  g_return_val_if_fail (STEAD_IS_PICTURE_BOX (self), NULL);

  for (guint i = 0; i < self->entries->len; i++)
    {
      const Entry *entry = self->entries->pdata[i];
      gint64 id = entry->id;

      if (id == 0)
        id = stead_picture_repo_add (store, entry->chosen->jpeg, entry->chosen->width, entry->chosen->height, error);
      if (id == 0)
        return NULL;
      g_array_append_val (ids, id);
    }
  return g_steal_pointer (&ids);
}
