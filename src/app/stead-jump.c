/* stead-jump.c - the jump field.
 *
 * A button that looks like a field stands in the strip; it opens an entry with a
 * list under it.  The focus stays in the entry: Up and Down move in the list,
 * Return goes there, Escape leaves.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-jump-goal.h"
#include "app/stead-fit-layout.h"
#include "app/stead-jump.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"

struct _SteadJump
{
  GtkWidget  parent_instance;

  GtkWidget *button;
  GtkWidget *popover;
  GtkWidget *entry;
  GtkWidget *scrolled;
  GtkWidget *list;
  GtkWidget *none;        /* said when nothing has these words */
  GPtrArray *goals;       /* of SteadJumpGoal, as listed */
  SteadDesk *desk;
  gboolean   papers_only;
};

G_DEFINE_FINAL_TYPE (SteadJump, stead_jump, GTK_TYPE_WIDGET)

/* --- the list ---------------------------------------------------------------------- */

static GtkWidget *
make_row (const SteadJumpGoal *goal)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *icon = gtk_image_new_from_icon_name (goal->icon);
  GtkWidget *title = gtk_label_new (goal->title);
  GtkWidget *kind = gtk_label_new (goal->kind);
  /* Translators: what is found and what it is, as a screen reader says it: "Brown hens, Flock". */
  g_autofree char *name = g_strdup_printf (C_("jump row", "%1$s, %2$s"), goal->title, goal->kind);

  stead_ui_name (icon, goal->kind);
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (title, TRUE);
  gtk_widget_add_css_class (kind, "soft");
  gtk_widget_add_css_class (kind, "small");
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), kind);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_widget_set_focusable (row, FALSE);
  stead_ui_name (row, name);
  return row;
}

/* A screen reader hears the line that Return would take. */
static void
describe (SteadJump *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));
  const SteadJumpGoal *goal = row != NULL ? self->goals->pdata[gtk_list_box_row_get_index (row)] : NULL;

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  goal != NULL ? goal->title : _("Nothing has these words."), -1);
}

static void
fill (SteadJump *self)
{
  SteadStore *store = self->desk != NULL ? stead_desk_get_store (self->desk) : NULL;
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
  g_clear_pointer (&self->goals, g_ptr_array_unref);
  if (store == NULL)
    return;
  self->goals = stead_jump_goals_find (store, gtk_editable_get_text (GTK_EDITABLE (self->entry)),
                                       self->papers_only);
  for (guint i = 0; i < self->goals->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list), make_row (self->goals->pdata[i]));
  gtk_widget_set_visible (self->none, self->goals->len == 0);
  gtk_widget_set_visible (self->scrolled, self->goals->len > 0);
  gtk_list_box_select_row (GTK_LIST_BOX (self->list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0));
  describe (self);
}

static void
scroll_to (SteadJump     *self,
           GtkListBoxRow *row)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scrolled));
  graphene_rect_t bounds;

  if (gtk_widget_compute_bounds (GTK_WIDGET (row), self->list, &bounds))
    gtk_adjustment_clamp_page (adjustment, (double) bounds.origin.y,
                               (double) (bounds.origin.y + bounds.size.height));
}

static void
move (SteadJump *self,
      int        by)
{
  GtkListBoxRow *now = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));
  int index = (now != NULL ? gtk_list_box_row_get_index (now) : -1) + by;
  GtkListBoxRow *next = index >= 0 ? gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), index) : NULL;

  if (next == NULL)
    return;
  gtk_list_box_select_row (GTK_LIST_BOX (self->list), next);
  scroll_to (self, next);
  describe (self);
}

/* --- going there ------------------------------------------------------------------------ */

static void
run_action (SteadJump  *self,
            const char *detailed)
{
  g_autofree char *name = NULL;
  g_autoptr(GVariant) target = NULL;

  if (g_action_parse_detailed_name (detailed, &name, &target, NULL))
    gtk_widget_activate_action_variant (GTK_WIDGET (self), name, target);
}

static void
go (SteadJump *self,
    guint      index)
{
  SteadJumpGoal *goal;
  g_autoptr(GPtrArray) goals = NULL;

  if (self->goals == NULL || index >= self->goals->len)
    return;
  goals = g_ptr_array_ref (self->goals);
  goal = goals->pdata[index];
  gtk_popover_popdown (GTK_POPOVER (self->popover));
  if (goal->action != NULL)
    run_action (self, goal->action);
  else if (goal->paper != NULL)
    stead_paper_dialog_show (GTK_WIDGET (self), self->desk, goal->paper, goal->of);
  else
    stead_desk_jump (self->desk, goal->target, goal->id);
}

static void
row_activated_cb (SteadJump     *self,
                  GtkListBoxRow *row)
{
  go (self, (guint) gtk_list_box_row_get_index (row));
}

static void
activate_cb (SteadJump *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  if (row != NULL)
    row_activated_cb (self, row);
}

static gboolean
key_cb (SteadJump *self,
        guint      keyval)
{
  switch (keyval)
    {
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      move (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      move (self, -1);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
clicked_cb (SteadJump *self)
{
  stead_jump_open (self, FALSE);
}

/* --- the object ---------------------------------------------------------------------------- */

static void
stead_jump_dispose (GObject *object)
{
  SteadJump *self = STEAD_JUMP (object);

  g_clear_pointer (&self->popover, gtk_widget_unparent);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->goals, g_ptr_array_unref);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_jump_parent_class)->dispose (object);
}

static void
stead_jump_class_init (SteadJumpClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_jump_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "jump");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SEARCH);
}

static GtkWidget *
make_icon (void)
{
  GtkWidget *icon = gtk_image_new_from_icon_name ("stead-search-symbolic");

  stead_ui_name (icon, _("Find or do"));
  return icon;
}

/* Like a field; where there is no room, the icon alone. */
static GtkWidget *
make_face (void)
{
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *words = gtk_label_new (_("Find or do"));
  GtkWidget *key = gtk_label_new (_("Ctrl+K"));

  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_add_css_class (key, "key");
  gtk_box_append (GTK_BOX (box), make_icon ());
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), key);
  gtk_widget_set_layout_manager (face, stead_fit_layout_new ());
  gtk_box_append (GTK_BOX (face), box);
  gtk_box_append (GTK_BOX (face), make_icon ());
  return face;
}

static void
make_button (SteadJump *self)
{
  self->button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (self->button), make_face ());
  gtk_widget_add_css_class (self->button, "find");
  gtk_widget_set_tooltip_text (self->button, _("Find a flock, a product, a receipt, or a command"));
  stead_ui_name (self->button, _("Find or do"));
  g_signal_connect_swapped (self->button, "clicked", G_CALLBACK (clicked_cb), self);
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
}

static void
make_list (SteadJump *self)
{
  self->list = gtk_list_box_new ();
  gtk_list_box_set_activate_on_single_click (GTK_LIST_BOX (self->list), TRUE);
  gtk_widget_set_focusable (self->list, FALSE);
  stead_ui_name (self->list, _("Found"));
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->scrolled), 360);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->list);
  self->none = gtk_label_new (_("Nothing has these words."));
  gtk_widget_add_css_class (self->none, "soft");
  gtk_widget_set_visible (self->none, FALSE);
}

static void
make_popover (SteadJump *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 40);
  stead_ui_name (self->entry, _("Find or do"));
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (fill), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (self->entry, keys);
  make_list (self);
  gtk_box_append (GTK_BOX (box), self->entry);
  gtk_box_append (GTK_BOX (box), self->scrolled);
  gtk_box_append (GTK_BOX (box), self->none);

  self->popover = gtk_popover_new ();
  gtk_widget_add_css_class (self->popover, "steading");
  gtk_popover_set_child (GTK_POPOVER (self->popover), box);
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
}

static void
stead_jump_init (SteadJump *self)
{
  make_button (self);
  make_popover (self);
}

GtkWidget *
stead_jump_new (void)
{
  return g_object_new (STEAD_TYPE_JUMP, NULL);
}

void
stead_jump_set_desk (SteadJump *self,
                     SteadDesk *desk)
{
  g_return_if_fail (STEAD_IS_JUMP (self));
  g_return_if_fail (STEAD_IS_DESK (desk));

  g_set_object (&self->desk, desk);
}

void
stead_jump_open (SteadJump *self,
                 gboolean   papers_only)
{
  g_return_if_fail (STEAD_IS_JUMP (self));

  self->papers_only = papers_only;
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), papers_only ? _("A document to look at and print")
                                                                       : _("A name, or what you want to do"));
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  fill (self);
  gtk_popover_popup (GTK_POPOVER (self->popover));
  gtk_widget_grab_focus (self->entry);
}
