/* stead-help-window.c - the help: its pages at the left, one of them at the right.
 *
 * A page is made of plain labels and pictures, so it follows the person's theme, text
 * size and language, and a screen reader reads it as it stands.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-guide.h"
#include "app/stead-help-window.h"
#include "app/stead-ui.h"

#define PAGE_KEY "stead-page"   /* a row's data: name of its page, not owned */
#define TEXT_CHARS 68           /* of a line that is read with ease */

struct _SteadHelpWindow
{
  GtkWindow  parent_instance;

  GtkWidget *list;
  GtkWidget *scroller;
  GtkWidget *page;
  GtkWidget *table;     /* (nullable): the one that rows are added to */
  int        n_rows;
};

G_DEFINE_FINAL_TYPE (SteadHelpWindow, stead_help_window, GTK_TYPE_WINDOW)

/* --- the parts of a page --------------------------------------------------------------- */

static gboolean
link_cb (GtkLabel        *label,
         const char      *page,
         SteadHelpWindow *self)
{
  stead_help_window_show (self, page);
  return TRUE;
}

static GtkWidget *
new_label (SteadHelpWindow   *self,
           GtkAccessibleRole  role,
           const char        *markup,
           const char        *css_class)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role", role, "label", markup, "use-markup", TRUE,
                                   "xalign", 0.f, "yalign", 0.f, "max-width-chars", TEXT_CHARS,
                                   "natural-wrap-mode", GTK_NATURAL_WRAP_NONE, NULL);

  stead_ui_wrap (GTK_LABEL (label));
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  g_signal_connect (label, "activate-link", G_CALLBACK (link_cb), self);
  return label;
}

/* A point or a step: its mark, and the words beside it. */
static GtkWidget *
new_item (SteadHelpWindow       *self,
          const SteadGuideBlock *block)
{
  GtkWidget *row = stead_ui_row_new (9);
  g_autofree char *mark = block->kind == STEAD_GUIDE_STEP ? g_strdup_printf ("%d.", block->number) : g_strdup ("•");
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "label", mark, "xalign", 1.f, "yalign", 0.f,
                                   "width-chars", 3, NULL);

  gtk_widget_add_css_class (label, "strong");
  stead_ui_row_append (row, label);
  stead_ui_row_append (row, new_label (self, GTK_ACCESSIBLE_ROLE_LABEL, block->markup, NULL));
  return row;
}

/* Nothing but the picture in its own size, or less where there is no room. */
static GtkWidget *
new_picture (const SteadGuideBlock *block)
{
  g_autofree char *path = stead_guide_picture_path (block->other);
  GtkWidget *picture = gtk_picture_new_for_resource (path);

  gtk_picture_set_alternative_text (GTK_PICTURE (picture), block->markup);
  gtk_picture_set_content_fit (GTK_PICTURE (picture), GTK_CONTENT_FIT_SCALE_DOWN);
  stead_ui_name (picture, block->markup);
  gtk_widget_set_halign (picture, GTK_ALIGN_START);
  gtk_widget_add_css_class (picture, "guide-picture");
  return picture;
}

static void
add_row (SteadHelpWindow       *self,
         const SteadGuideBlock *block)
{
  gboolean is_head = block->kind == STEAD_GUIDE_HEAD;
  const char *css_class = is_head ? "heading" : NULL;

  if (is_head)
    {
      self->table = g_object_new (GTK_TYPE_GRID, "row-spacing", 6, "column-spacing", 24, NULL);
      gtk_box_append (GTK_BOX (self->page), self->table);
      self->n_rows = 0;
    }
  gtk_grid_attach (GTK_GRID (self->table), new_label (self, GTK_ACCESSIBLE_ROLE_LABEL, block->other, css_class),
                   0, self->n_rows, 1, 1);
  gtk_grid_attach (GTK_GRID (self->table), new_label (self, GTK_ACCESSIBLE_ROLE_LABEL, block->markup, css_class),
                   1, self->n_rows++, 1, 1);
}

static GtkWidget *
new_block (SteadHelpWindow       *self,
           const SteadGuideBlock *block)
{
  switch (block->kind)
    {
    case STEAD_GUIDE_HEADING:
      return new_label (self, GTK_ACCESSIBLE_ROLE_HEADING, block->markup, "guide-heading");
    case STEAD_GUIDE_POINT:
    case STEAD_GUIDE_STEP:
      return new_item (self, block);
    case STEAD_GUIDE_CAUTION:
      return new_label (self, GTK_ACCESSIBLE_ROLE_LABEL, block->markup, "caution");
    case STEAD_GUIDE_PICTURE:
      return new_picture (block);
    case STEAD_GUIDE_TEXT:
    default:
      return new_label (self, GTK_ACCESSIBLE_ROLE_LABEL, block->markup, NULL);
    }
}

static void
show_page (SteadHelpWindow      *self,
           const SteadGuidePage *page)
{
  g_autofree char *title = g_markup_escape_text (page->title, -1);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->page)) != NULL)
    gtk_box_remove (GTK_BOX (self->page), child);
  gtk_box_append (GTK_BOX (self->page), new_label (self, GTK_ACCESSIBLE_ROLE_HEADING, title, "title"));
  for (guint i = 0; i < page->blocks->len; i++)
    {
      const SteadGuideBlock *block = page->blocks->pdata[i];

      if (block->kind == STEAD_GUIDE_HEAD || block->kind == STEAD_GUIDE_ROW)
        add_row (self, block);
      else
        gtk_box_append (GTK_BOX (self->page), new_block (self, block));
    }
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)), 0);
  stead_ui_name (self->scroller, page->title);
}

/* --- the list ---------------------------------------------------------------------------- */

static void
selected_cb (SteadHelpWindow *self,
             GtkListBoxRow   *row)
{
  g_autoptr(SteadGuidePage) page = NULL;

  if (row != NULL)
    page = stead_guide_read (g_object_get_data (G_OBJECT (row), PAGE_KEY));
  if (page != NULL)
    show_page (self, page);
}

static void
add_pages (SteadHelpWindow *self)
{
  for (const char * const *name = stead_guide_get_names (); *name != NULL; name++)
    {
      g_autoptr(SteadGuidePage) page = stead_guide_read (*name);
      GtkWidget *row = gtk_list_box_row_new ();
      GtkWidget *label;

      if (page == NULL)
        continue;
      label = g_object_new (GTK_TYPE_LABEL, "label", page->title, "xalign", 0.f, "width-chars", 20,
                            "max-width-chars", 20, NULL);
      stead_ui_wrap (GTK_LABEL (label));
      gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
      stead_ui_name (row, page->title);
      g_object_set_data (G_OBJECT (row), PAGE_KEY, (gpointer) *name);
      gtk_list_box_append (GTK_LIST_BOX (self->list), row);
    }
}

void
stead_help_window_show (SteadHelpWindow *self,
                        const char      *name)
{
  g_return_if_fail (STEAD_IS_HELP_WINDOW (self));

  for (GtkWidget *row = gtk_widget_get_first_child (self->list); row != NULL; row = gtk_widget_get_next_sibling (row))
    if (g_strcmp0 (g_object_get_data (G_OBJECT (row), PAGE_KEY), name) == 0)
      {
        gtk_list_box_select_row (GTK_LIST_BOX (self->list), GTK_LIST_BOX_ROW (row));
        gtk_widget_grab_focus (row);
        return;
      }
}

/* --- the object ------------------------------------------------------------------------------ */

static void
stead_help_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_HELP_WINDOW);
  G_OBJECT_CLASS (stead_help_window_parent_class)->dispose (object);
}

static void
stead_help_window_class_init (SteadHelpWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_help_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-help-window.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadHelpWindow, list);
  gtk_widget_class_bind_template_child (widget_class, SteadHelpWindow, scroller);
  gtk_widget_class_bind_template_child (widget_class, SteadHelpWindow, page);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_help_window_init (SteadHelpWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_pages (self);
  stead_help_window_show (self, STEAD_GUIDE_FIRST);
}

GtkWidget *
stead_help_window_new (void)
{
  return g_object_new (STEAD_TYPE_HELP_WINDOW, NULL);
}

static GtkWindow *
find_open (GtkApplication *application)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (STEAD_IS_HELP_WINDOW (l->data))
      return l->data;
  return NULL;
}

void
stead_help_window_present (GtkApplication *application,
                           const char     *name)
{
  GtkWindow *window;

  g_return_if_fail (GTK_IS_APPLICATION (application));

  window = find_open (application);
  if (window == NULL)
    {
      window = GTK_WINDOW (stead_help_window_new ());
      gtk_window_set_application (window, application);
    }
  if (name != NULL)
    stead_help_window_show (STEAD_HELP_WINDOW (window), name);
  gtk_window_present (window);
}

void
stead_help_window_close (GtkApplication *application)
{
  GtkWindow *window;

  g_return_if_fail (GTK_IS_APPLICATION (application));

  window = find_open (application);
  if (window != NULL)
    gtk_window_destroy (window);
}
