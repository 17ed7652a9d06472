/* stead-raise-page.c - the place Raise: a chip for each batch and each water, and
 * under them the view of the chosen one.
 *
 * What can be raised is a row of kinds[]; its view is made when it is first shown.
 * A chip of a water carries its id below zero, so that it is never taken for a batch.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-raise-page.h"

#include "app/raise/stead-crop-dialog.h"
#include "app/raise/stead-crop-view.h"
#include "app/raise/stead-fish-dialog.h"
#include "app/raise/stead-fish-view.h"
#include "app/raise/stead-flock-dialog.h"
#include "app/raise/stead-flock-view.h"
#include "app/raise/stead-water-dialog.h"
#include "app/raise/stead-water-view.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"
#include "store/stead-batch-repo.h"
#include "store/stead-water-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-raise-page.ui")

/* One kind of thing that Raise shows. */
typedef struct
{
  const char *name;                                   /* of its page in the stack */
  GtkWidget *(*make)  (SteadDesk *desk);
  void       (*show)  (GtkWidget *view, gint64 id);
  void       (*focus) (GtkWidget *view);
  void       (*edit)  (GtkWidget *parent, SteadDesk *desk, gint64 id);   /* 0: a new one */
  const char *add_label;                              /* untranslated */
  const char *edit_label;
} Kind;

static void
show_flock (GtkWidget *view,
            gint64     id)
{
  stead_flock_view_show (STEAD_FLOCK_VIEW (view), id);
}

static void
focus_flock (GtkWidget *view)
{
  stead_flock_view_focus (STEAD_FLOCK_VIEW (view));
}

static void
show_fish (GtkWidget *view,
           gint64     id)
{
  stead_fish_view_show (STEAD_FISH_VIEW (view), id);
}

static void
focus_fish (GtkWidget *view)
{
  stead_fish_view_focus (STEAD_FISH_VIEW (view));
}

static void
show_crop (GtkWidget *view,
           gint64     id)
{
  stead_crop_view_show (STEAD_CROP_VIEW (view), id);
}

static void
focus_crop (GtkWidget *view)
{
  stead_crop_view_focus (STEAD_CROP_VIEW (view));
}

static void
show_water (GtkWidget *view,
            gint64     id)
{
  stead_water_view_show (STEAD_WATER_VIEW (view), id);
}

static void
focus_water (GtkWidget *view)
{
  stead_water_view_focus (STEAD_WATER_VIEW (view));
}

enum { KIND_FLOCK, KIND_FISH, KIND_CROP, KIND_WATER };

static const Kind kinds[] = {
  [KIND_FLOCK] = { "flock", stead_flock_view_new, show_flock, focus_flock, stead_flock_dialog_show,
                   N_("New flock"), N_("Change this flock…") },
  [KIND_FISH] = { "fish", stead_fish_view_new, show_fish, focus_fish, stead_fish_dialog_show,
                  N_("New group of fish"), N_("Change this group…") },
  [KIND_CROP] = { "crop", stead_crop_view_new, show_crop, focus_crop, stead_crop_dialog_show,
                  N_("New crop"), N_("Change this crop…") },
  [KIND_WATER] = { "water", stead_water_view_new, show_water, focus_water, stead_water_dialog_show,
                   N_("New water"), N_("Change this water…") },
};

/* The one that is no batch. */
#define WATER_KIND (&kinds[KIND_WATER])

struct _SteadRaisePage
{
  SteadPage     parent_instance;

  gint64        chosen;                      /* id of a batch, or -id of a water; 0: none */
  GHashTable   *kind_of;                     /* chip's id to its Kind, of all that is listed */
  GtkWidget    *view_of[G_N_ELEMENTS (kinds)];
  gboolean      with_ended;

  GtkWidget    *head, *sentence, *edit, *ended;
  GtkWidget    *choice;                      /* popover under the chip that adds: which kind */
  SteadChips   *chips;
  GtkStack     *views;
};

G_DEFINE_FINAL_TYPE (SteadRaisePage, stead_raise_page, STEAD_TYPE_PAGE)

/* --- what there is ----------------------------------------------------------- */

static const Kind *
kind_of_batch (const SteadBatch *batch)
{
  switch (batch->kind)
    {
    case STEAD_BATCH_FLOCK:
      return &kinds[KIND_FLOCK];
    case STEAD_BATCH_FISH:
      return &kinds[KIND_FISH];
    case STEAD_BATCH_CROP:
      return &kinds[KIND_CROP];
    case STEAD_BATCH_KITCHEN:
    default:
      return NULL;
    }
}

static void
add_chip (SteadRaisePage *self,
          gint64          id,
          const char     *name,
          const Kind     *kind)
{
  gint64 *key = g_new (gint64, 1);

  *key = id;
  g_hash_table_insert (self->kind_of, key, (gpointer) kind);
  stead_chips_append (self->chips, id, name);
  if (self->chosen == 0)
    self->chosen = id;
}

/* Batches that are over stay out of the way until they are asked for, but for the
 * chosen one.  Returns: how many there are that are over, -1 with @error */
static int
add_batches (SteadRaisePage  *self,
             SteadStore      *store,
             GError         **error)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, error);
  int n_ended = 0;

  if (batches == NULL)
    return -1;
  for (guint i = 0; i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];
      const Kind *kind = kind_of_batch (batch);
      gboolean over = batch->ended_on != STEAD_DAY_NONE;

      n_ended += over && kind != NULL;
      if (kind != NULL && (!over || self->with_ended || batch->id == self->chosen))
        add_chip (self, batch->id, batch->name, kind);
    }
  return n_ended;
}

/* As add_batches(), for the waters. */
static int
add_waters (SteadRaisePage  *self,
            SteadStore      *store,
            GError         **error)
{
  g_autoptr(GPtrArray) waters = stead_water_repo_list (store, TRUE, error);
  int n_ended = 0;

  if (waters == NULL)
    return -1;
  for (guint i = 0; i < waters->len; i++)
    {
      const SteadWater *water = waters->pdata[i];
      gboolean over = water->ended_on != STEAD_DAY_NONE;

      n_ended += over;
      if (!over || self->with_ended || -water->id == self->chosen)
        add_chip (self, -water->id, water->name, WATER_KIND);
    }
  return n_ended;
}

static int
add_all (SteadRaisePage  *self,
         SteadStore      *store,
         GError         **error)
{
  int batches = add_batches (self, store, error);
  int waters = batches < 0 ? -1 : add_waters (self, store, error);

  return waters < 0 ? -1 : batches + waters;
}

/* With nothing but batches that are over, those are shown. */
static gboolean
show_chips (SteadRaisePage  *self,
            GError         **error)
{
  SteadStore *store = stead_page_get_store (STEAD_PAGE (self));
  gint64 wanted = self->chosen;
  int n_ended;

  g_hash_table_remove_all (self->kind_of);
  stead_chips_clear (self->chips);
  n_ended = add_all (self, store, error);
  if (n_ended > 0 && g_hash_table_size (self->kind_of) == 0)
    {
      self->with_ended = TRUE;
      n_ended = add_all (self, store, error);
    }
  if (n_ended < 0)
    return FALSE;
  if (!g_hash_table_contains (self->kind_of, &self->chosen))
    self->chosen = 0;
  if (self->chosen == 0 && wanted != 0 && g_hash_table_size (self->kind_of) > 0)
    return show_chips (self, error);
  stead_chips_choose (self->chips, self->chosen);
  gtk_widget_set_visible (self->ended, n_ended > 0);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->ended), self->with_ended);
  return TRUE;
}

/* --- showing one --------------------------------------------------------------- */

static GtkWidget *
view_of_kind (SteadRaisePage *self,
              const Kind     *kind)
{
  gsize at = (gsize) (kind - kinds);

  if (self->view_of[at] == NULL)
    {
      self->view_of[at] = kind->make (stead_page_get_desk (STEAD_PAGE (self)));
      gtk_stack_add_named (self->views, self->view_of[at], kind->name);
    }
  return self->view_of[at];
}

static const Kind *
chosen_kind (SteadRaisePage *self)
{
  return g_hash_table_lookup (self->kind_of, &self->chosen);
}

static void
show_chosen (SteadRaisePage *self)
{
  const Kind *kind = chosen_kind (self);
  GtkWidget *view = view_of_kind (self, kind);

  kind->show (view, ABS (self->chosen));
  gtk_button_set_label (GTK_BUTTON (self->edit), _(kind->edit_label));
  gtk_stack_set_visible_child (self->views, view);
}

static void
stead_raise_page_refresh (SteadPage *page)
{
  SteadRaisePage *self = STEAD_RAISE_PAGE (page);
  g_autoptr(GError) error = NULL;
  gboolean read = show_chips (self, &error);

  gtk_widget_set_visible (self->sentence, !read);
  gtk_label_set_text (GTK_LABEL (self->sentence), read ? "" : error->message);
  gtk_widget_set_visible (self->head, read && self->chosen != 0);
  gtk_widget_set_visible (GTK_WIDGET (self->views), read);
  if (read && self->chosen != 0)
    show_chosen (self);
  else
    gtk_stack_set_visible_child_name (self->views, "empty");
}

static void
stead_raise_page_show (SteadPage   *page,
                       SteadTarget  target,
                       gint64       id)
{
  SteadRaisePage *self = STEAD_RAISE_PAGE (page);
  const Kind *kind;

  if (target != STEAD_TARGET_FLOCK && target != STEAD_TARGET_BATCH && target != STEAD_TARGET_WATER)
    return;
  if (id != 0)
    self->chosen = target == STEAD_TARGET_WATER ? -id : id;
  stead_page_invalidate (page);
  kind = chosen_kind (self);
  if (kind != NULL)
    kind->focus (view_of_kind (self, kind));
}

static void
chosen_cb (SteadRaisePage *self,
           gint64          id)
{
  self->chosen = id;
  stead_page_invalidate (STEAD_PAGE (self));
}

static void
ended_cb (SteadRaisePage *self)
{
  gboolean with_ended = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->ended));

  if (with_ended == self->with_ended)
    return;
  self->with_ended = with_ended;
  stead_page_invalidate (STEAD_PAGE (self));
}

/* --- new ones, and changes --------------------------------------------------------- */

static void
add_kind_cb (GtkWidget *button,
             gpointer   data)
{
  const Kind *kind = data;
  GtkWidget *page = gtk_widget_get_ancestor (button, STEAD_TYPE_RAISE_PAGE);
  GtkWidget *popover = gtk_widget_get_ancestor (button, GTK_TYPE_POPOVER);

  if (popover != NULL)
    gtk_popover_popdown (GTK_POPOVER (popover));
  kind->edit (page, stead_page_get_desk (STEAD_PAGE (page)), 0);
}

/* A button for each kind, in @box. */
static void
fill_kinds (GtkWidget  *box,
            const char *css_class)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_(kinds[i].add_label));

      gtk_widget_add_css_class (button, css_class);
      g_signal_connect (button, "clicked", G_CALLBACK (add_kind_cb), (gpointer) &kinds[i]);
      gtk_box_append (GTK_BOX (box), button);
    }
}

static void
edit_cb (SteadRaisePage *self)
{
  const Kind *kind = chosen_kind (self);

  if (kind != NULL)
    kind->edit (GTK_WIDGET (self), stead_page_get_desk (STEAD_PAGE (self)), ABS (self->chosen));
}

static void
add_cb (SteadRaisePage *self)
{
  gtk_popover_popup (GTK_POPOVER (self->choice));
}

static void
build_add (SteadRaisePage *self,
           GtkWidget      *first)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  fill_kinds (box, "flat");
  self->choice = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (self->choice), box);
  gtk_widget_set_parent (self->choice, stead_chips_get_add (self->chips));
  fill_kinds (first, "primary");
}

static void
stead_raise_page_dispose (GObject *object)
{
  SteadRaisePage *self = STEAD_RAISE_PAGE (object);

  g_clear_pointer (&self->choice, gtk_widget_unparent);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_RAISE_PAGE);
  g_clear_pointer (&self->kind_of, g_hash_table_unref);
  G_OBJECT_CLASS (stead_raise_page_parent_class)->dispose (object);
}

static void
stead_raise_page_class_init (SteadRaisePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  SteadPageClass *page_class = STEAD_PAGE_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHIPS);
  G_OBJECT_CLASS (klass)->dispose = stead_raise_page_dispose;
  page_class->refresh = stead_raise_page_refresh;
  page_class->show = stead_raise_page_show;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadRaisePage, head);
  gtk_widget_class_bind_template_child (widget_class, SteadRaisePage, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadRaisePage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadRaisePage, ended);
  gtk_widget_class_bind_template_child (widget_class, SteadRaisePage, edit);
  gtk_widget_class_bind_template_child (widget_class, SteadRaisePage, views);
  gtk_widget_class_bind_template_child_full (widget_class, "first", FALSE, 0);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, ended_cb);
  gtk_widget_class_bind_template_callback (widget_class, edit_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
}

static void
stead_raise_page_init (SteadRaisePage *self)
{
  self->kind_of = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->views);
  build_add (self, GTK_WIDGET (gtk_widget_get_template_child (GTK_WIDGET (self), STEAD_TYPE_RAISE_PAGE, "first")));
}

GtkWidget *
stead_raise_page_new (SteadDesk *desk)
{
  return g_object_new (STEAD_TYPE_RAISE_PAGE, "desk", desk, NULL);
}
