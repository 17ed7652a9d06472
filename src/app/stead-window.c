/* stead-window.c - one window: one farm, its posts and its places.
 *
 * Invariants:
 *  1. A place is made when it is first shown, and refreshed only while it is shown.
 *  2. What the strip says follows from the same answers as the places.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-draft.h"
#include "app/stead-jump.h"
#include "app/stead-page.h"
#include "app/stead-post.h"
#include "app/stead-said.h"
#include "app/stead-settings.h"
#include "app/stead-strip-news.h"
#include "app/stead-strip.h"
#include "app/stead-typing.h"
#include "app/stead-ui.h"
#include "app/stead-window-private.h"

#define MOST_BEEN 50    /* steps that "back" goes */
#define ALONE "alone"   /* name of a page that stands without posts */

struct _SteadWindow
{
  GtkApplicationWindow  parent_instance;

  GtkWidget            *strip;
  GtkWidget            *plain_title;
  GtkWidget            *undo_button;
  GtkWidget            *redo_button;
  GtkWidget            *menu_button;
  GMenu                *steps;        /* of the menu */
  GtkWidget            *notice;
  GtkWidget            *notice_text;
  GtkWidget            *notice_button;
  GtkWidget            *jump;
  GtkWidget            *stack;
  GtkWidget            *said;

  SteadDesk            *desk;
  SteadStripNews       *news;
  char                 *path;     /* (nullable) */
  GQueue                been;     /* of names of places, not owned: where "back" leads */
};

G_DEFINE_FINAL_TYPE (SteadWindow, stead_window, GTK_TYPE_APPLICATION_WINDOW)

/* --- what stands around the place --------------------------------------------------- */

static void
update_step (SteadWindow *self,
             GtkWidget   *button,
             const char  *action,
             gboolean     can,
             const char  *text)
{
  gtk_widget_set_tooltip_text (button, text);
  stead_ui_name (button, text);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), action, can);
  g_menu_append (self->steps, text, action);
}

/* "Undo: 22 eggs on March 3", or that there is nothing to undo. */
static void
update_steps (SteadWindow *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  gboolean can = store != NULL && !stead_store_is_read_only (store);
  g_autofree char *undo = can ? stead_store_get_undo_name (store) : NULL;
  g_autofree char *redo = can ? stead_store_get_redo_name (store) : NULL;
  /* Translators: %s is what was done: "22 eggs on March 3". */
  g_autofree char *undo_text = undo != NULL ? g_strdup_printf (_("Undo: %s"), undo) : NULL;
  /* Translators: %s is what was done: "22 eggs on March 3". */
  g_autofree char *redo_text = redo != NULL ? g_strdup_printf (_("Redo: %s"), redo) : NULL;

  g_menu_remove_all (self->steps);
  update_step (self, self->undo_button, "win.undo", undo != NULL,
               undo_text != NULL ? undo_text : _("Nothing to undo"));
  update_step (self, self->redo_button, "win.redo", redo != NULL,
               redo_text != NULL ? redo_text : _("Nothing to redo"));
}

static void
update_title (SteadWindow *self)
{
  const SteadFarm *farm = stead_desk_get_farm (self->desk);

  gtk_window_set_title (GTK_WINDOW (self), farm != NULL ? farm->name : _("Steading"));
}

void
stead_window_set_notice (SteadWindow *self,
                         const char  *text,
                         gboolean     with_copy)
{
  gtk_widget_set_visible (self->notice, text != NULL);
  gtk_label_set_text (GTK_LABEL (self->notice_text), text != NULL ? text : "");
  gtk_widget_set_visible (self->notice_button, with_copy);
}

static void
update_frame (SteadWindow *self)
{
  gboolean open = stead_desk_get_store (self->desk) != NULL;

  gtk_widget_set_visible (self->strip, open);
  gtk_widget_set_visible (self->plain_title, !open);
  gtk_widget_set_visible (self->undo_button, open);
  gtk_widget_set_visible (self->redo_button, open);
  gtk_widget_set_visible (self->jump, open);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.save-copy", open);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.people", open);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.backups", self->path != NULL);
  update_title (self);
  update_steps (self);
}

/* --- places ----------------------------------------------------------------------------- */

static GtkWidget *
ensure_page (SteadWindow *self,
             const SteadPost *place)
{
  GtkWidget *page = gtk_stack_get_child_by_name (GTK_STACK (self->stack), place->name);

  if (page == NULL)
    {
      page = g_object_new (place->page_type (), "desk", self->desk, NULL);
      gtk_stack_add_named (GTK_STACK (self->stack), page, place->name);
    }
  return page;
}

static void
drop_pages (SteadWindow *self)
{
  GtkWidget *child;

  g_queue_clear (&self->been);
  while ((child = gtk_widget_get_first_child (self->stack)) != NULL)
    gtk_stack_remove (GTK_STACK (self->stack), child);
}

void
stead_window_go (SteadWindow *self,
                 const char  *name)
{
  const SteadPost *place = stead_post_find (name);
  const SteadPost *before;
  GtkWidget *focus;
  gboolean follow;

  g_return_if_fail (STEAD_IS_WINDOW (self));

  if (place == NULL || stead_desk_get_store (self->desk) == NULL)
    return;
  focus = gtk_window_get_focus (GTK_WINDOW (self));
  ensure_page (self, place);
  before = stead_post_find (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)));
  if (before != NULL && before != place)
    g_queue_push_tail (&self->been, (gpointer) before->name);
  if (g_queue_get_length (&self->been) > MOST_BEEN)
    g_queue_pop_head (&self->been);
  follow = focus == NULL || !gtk_widget_is_ancestor (focus, self->strip);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), place->name);
  stead_strip_select (STEAD_STRIP (self->strip), place->name);
  /* Who walks along the posts stays there; anybody else goes on in the place. */
  focus = gtk_window_get_focus (GTK_WINDOW (self));
  if (follow && (focus == NULL || !gtk_widget_is_ancestor (focus, self->stack)))
    gtk_widget_child_focus (self->stack, GTK_DIR_TAB_FORWARD);
  stead_settings_set_text ("last-place", place->name);
}

const char *
stead_window_get_place (SteadWindow *self)
{
  const SteadPost *place;

  g_return_val_if_fail (STEAD_IS_WINDOW (self), NULL);

  place = stead_post_find (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)));
  return place != NULL ? place->name : NULL;
}

static void
jump_cb (SteadWindow *self,
         int          target,
         gint64       id)
{
  const SteadPost *place = stead_post_of_target (target);

  if (place == NULL)
    return;
  stead_window_go (self, place->name);
  stead_page_show (STEAD_PAGE (ensure_page (self, place)), (SteadTarget) target, id);
}

static void
said_cb (SteadWindow *self,
         const char  *text,
         gboolean     with_undo)
{
  stead_said_show (STEAD_SAID (self->said), text, with_undo);
}

static gboolean
left_cb (SteadWindow *self,
         GObject     *dialog)
{
  const char *title = gtk_window_get_title (GTK_WINDOW (dialog));
  /* Translators: the title of a dialog, "A new receipt". */
  g_autofree char *text = g_strdup_printf (_("“%s” was closed before it was saved."), title != NULL ? title : "");

  stead_said_offer (STEAD_SAID (self->said), text, GTK_WINDOW (dialog));
  return TRUE;
}

/* --- actions --------------------------------------------------------------------------------- */

static void
undo_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  stead_desk_undo (STEAD_WINDOW (widget)->desk);
}

static void
redo_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  stead_desk_redo (STEAD_WINDOW (widget)->desk);
}

/* "win.place" (i): the nth post, from 1. */
static void
place_action (GtkWidget  *widget,
              const char *action,
              GVariant   *number)
{
  SteadWindow *self = STEAD_WINDOW (widget);
  const char *name = stead_strip_get_nth (STEAD_STRIP (self->strip), (guint) g_variant_get_int32 (number) - 1);

  if (name != NULL)
    stead_window_go (self, name);
}

static void
jump_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  SteadWindow *self = STEAD_WINDOW (widget);

  if (stead_desk_get_store (self->desk) != NULL)
    stead_jump_open (STEAD_JUMP (self->jump), g_str_equal (action, "win.print"));
}

static void
go_action (GtkWidget  *widget,
           const char *action,
           GVariant   *name)
{
  stead_window_go (STEAD_WINDOW (widget), g_variant_get_string (name, NULL));
}

static void
back_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  SteadWindow *self = STEAD_WINDOW (widget);
  const char *name = g_queue_pop_tail (&self->been);

  if (name == NULL)
    return;
  stead_window_go (self, name);
  g_queue_pop_tail (&self->been);   /* going back is no step forward */
}

static void
menu_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (STEAD_WINDOW (widget)->menu_button));
}

/* --- size ------------------------------------------------------------------------------------------ */

static void
restore_size (SteadWindow *self)
{
  GSettings *settings = stead_settings_get ();

  if (settings == NULL)
    return;
  gtk_window_set_default_size (GTK_WINDOW (self), g_settings_get_int (settings, "window-width"),
                               g_settings_get_int (settings, "window-height"));
  if (g_settings_get_boolean (settings, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
}

static void
keep_size (SteadWindow *self)
{
  GSettings *settings = stead_settings_get ();
  int width, height;

  if (settings == NULL)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set_boolean (settings, "window-maximized", gtk_window_is_maximized (GTK_WINDOW (self)));
  if (width < 360 || height < 240)
    return;
  g_settings_set_int (settings, "window-width", width);
  g_settings_set_int (settings, "window-height", height);
}

/* Goes where something is typed and not saved, and asks; who closes once more means it. */
static gboolean
asks_first (SteadWindow *self)
{
  g_autofree char *name = NULL, *text = NULL;
  GtkWidget *form = stead_draft_find (self->stack, &name);
  GtkWidget *page = form;

  if (form == NULL)
    return FALSE;
  /* Translators: the name of a flock, a tank, a cooler. */
  text = g_strdup_printf (_("What is typed for %s is not saved yet."), name);
  if (stead_said_asks (STEAD_SAID (self->said), text))
    return FALSE;
  while (gtk_widget_get_parent (page) != self->stack)
    page = gtk_widget_get_parent (page);
  stead_window_go (self, gtk_stack_page_get_name (gtk_stack_get_page (GTK_STACK (self->stack), page)));
  gtk_widget_child_focus (form, GTK_DIR_TAB_FORWARD);
  stead_said_ask (STEAD_SAID (self->said), text, _("Close without it"), "window.close");
  return TRUE;
}

static gboolean
stead_window_close_request (GtkWindow *window)
{
  if (asks_first (STEAD_WINDOW (window)))
    return TRUE;
  keep_size (STEAD_WINDOW (window));
  return GTK_WINDOW_CLASS (stead_window_parent_class)->close_request (window);
}

/* --- the object --------------------------------------------------------------------------------- */

static void
active_cb (SteadWindow *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);

  /* Somebody may have written to the file from another window or machine. */
  if (gtk_window_is_active (GTK_WINDOW (self)) && store != NULL)
    stead_store_poll (store);
}

static void
stead_window_dispose (GObject *object)
{
  SteadWindow *self = STEAD_WINDOW (object);

  g_clear_object (&self->news);
  if (self->stack != NULL)
    drop_pages (self);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WINDOW);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (stead_window_parent_class)->dispose (object);
}

static void
stead_window_class_init (SteadWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = stead_window_close_request;
  g_type_ensure (STEAD_TYPE_STRIP);
  g_type_ensure (STEAD_TYPE_SAID);
  g_type_ensure (STEAD_TYPE_JUMP);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-window.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, strip);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, plain_title);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, steps);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, notice_text);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, notice_button);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, jump);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, SteadWindow, said);
  gtk_widget_class_install_action (widget_class, "win.undo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "win.redo", NULL, redo_action);
  gtk_widget_class_install_action (widget_class, "win.place", "i", place_action);
  gtk_widget_class_install_action (widget_class, "win.go", "s", go_action);
  gtk_widget_class_install_action (widget_class, "win.back", NULL, back_action);
  gtk_widget_class_install_action (widget_class, "win.jump", NULL, jump_action);
  gtk_widget_class_install_action (widget_class, "win.print", NULL, jump_action);
  gtk_widget_class_install_action (widget_class, "win.menu", NULL, menu_action);
  stead_typing_install (widget_class);
  stead_window_install_files (widget_class);
  stead_window_install_rescue (widget_class);
  stead_window_install_dialogs (widget_class);
}

static void
stead_window_init (SteadWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (GTK_STACK (self->stack));
  self->desk = stead_desk_new ();
  for (gsize i = 0; i < STEAD_N_POSTS; i++)
    stead_strip_add (STEAD_STRIP (self->strip), stead_posts[i].name,
                     g_dpgettext2 (GETTEXT_PACKAGE, "place", stead_posts[i].label));
  g_signal_connect_swapped (self->strip, "chosen", G_CALLBACK (stead_window_go), self);
  g_signal_connect_object (self->desk, "changed", G_CALLBACK (update_frame), self, G_CONNECT_SWAPPED);
  self->news = stead_strip_news_new (STEAD_STRIP (self->strip), self->desk);
  g_signal_connect_object (self->desk, "jump", G_CALLBACK (jump_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->desk, "said", G_CALLBACK (said_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->desk, "left", G_CALLBACK (left_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (active_cb), NULL);
  stead_jump_set_desk (STEAD_JUMP (self->jump), self->desk);
  stead_typing_watch (GTK_WINDOW (self), self->desk);
  stead_ui_name_menu (GTK_MENU_BUTTON (self->menu_button));
  restore_size (self);
  update_frame (self);
  stead_window_welcome (self);
}

GtkWidget *
stead_window_new (GtkApplication *application)
{
  return g_object_new (STEAD_TYPE_WINDOW, "application", application, NULL);
}

SteadDesk *
stead_window_get_desk (SteadWindow *self)
{
  g_return_val_if_fail (STEAD_IS_WINDOW (self), NULL);
  return self->desk;
}

const char *
stead_window_get_path (SteadWindow *self)
{
  g_return_val_if_fail (STEAD_IS_WINDOW (self), NULL);
  return self->path;
}

void
stead_window_set_path (SteadWindow *self,
                       const char  *path)
{
  char *copy = g_strdup (path);

  g_free (self->path);
  self->path = copy;
}

/* A worker may keep the store a moment longer than the window; others need not wait. */
static void
let_go (SteadWindow *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);

  if (store != NULL)
    stead_store_let_go (store);
}

void
stead_window_close_farm (SteadWindow *self)
{
  let_go (self);
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
  drop_pages (self);
  stead_window_set_notice (self, NULL, FALSE);
  stead_said_hide (STEAD_SAID (self->said));
  stead_desk_set_store (self->desk, NULL);
}

void
stead_window_show_alone (SteadWindow *self,
                         GtkWidget   *page)
{
  stead_window_close_farm (self);
  gtk_stack_add_named (GTK_STACK (self->stack), page, ALONE);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), ALONE);
  update_frame (self);
  gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD);
}

/* The place that was left last, or the first one. */
static const char *
first_place (void)
{
  g_autofree char *last = stead_settings_get_text ("last-place");
  const SteadPost *place = stead_post_find (last);

  return place != NULL ? place->name : stead_posts[0].name;
}

void
stead_window_take (SteadWindow *self,
                   SteadStore  *store)
{
  g_autofree char *holder = NULL;

  g_return_if_fail (STEAD_IS_WINDOW (self));
  g_return_if_fail (STEAD_IS_STORE (store));

  let_go (self);
  holder = stead_store_hold (store);
  stead_window_set_path (self, stead_store_get_path (store));
  drop_pages (self);
  stead_desk_set_store (self->desk, store);
  if (holder != NULL)
    stead_window_set_notice (self, holder, TRUE);
  else if (stead_store_is_read_only (store))
    stead_window_set_notice (self, _("This farm can only be read: the file or its folder is protected. "
                                     "Save a copy to make changes in it."), TRUE);
  stead_window_go (self, first_place ());
}
