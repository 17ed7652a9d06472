/* stead-view.c - one of the views of Price: a sentence over two columns. */
#include "config.h"

#include "app/price/stead-view.h"

#include <glib/gi18n-lib.h>

#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "store/stead-product-repo.h"

#define LEFT_WIDTH 320

typedef struct
{
  SteadDesk *desk;       /* (nullable) */
  GtkWidget *box, *sentence, *advice, *columns, *left, *right, *missing, *left_out;
} SteadViewPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SteadView, stead_view, GTK_TYPE_WIDGET)

static SteadViewPrivate *
get (SteadView *self)
{
  return stead_view_get_instance_private (self);
}

static GtkWidget *
make_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
make_column (GtkWidget *columns,
             gboolean   wide)
{
  GtkWidget *scroll = gtk_scrolled_window_new ();
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroll), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scroll), wide);
  gtk_widget_set_hexpand (scroll, wide);
  gtk_widget_set_vexpand (scroll, TRUE);
  if (!wide)
    gtk_widget_set_size_request (scroll, LEFT_WIDTH, -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroll), column);
  gtk_box_append (GTK_BOX (columns), scroll);
  return column;
}

static void
stead_view_dispose (GObject *object)
{
  SteadViewPrivate *priv = get (STEAD_VIEW (object));

  g_clear_object (&priv->desk);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_view_parent_class)->dispose (object);
}

static void
stead_view_class_init (SteadViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_view_init (SteadView *self)
{
  SteadViewPrivate *priv = get (self);

  priv->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  priv->sentence = make_label ("sentence");
  priv->advice = make_label ("soft");
  priv->missing = make_label ("sentence");
  gtk_widget_set_visible (priv->missing, FALSE);
  priv->columns = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 16);
  gtk_widget_set_vexpand (priv->columns, TRUE);
  priv->left = make_column (priv->columns, FALSE);
  priv->right = make_column (priv->columns, TRUE);
  gtk_box_append (GTK_BOX (priv->box), priv->sentence);
  gtk_box_append (GTK_BOX (priv->box), priv->advice);
  priv->left_out = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_layout_manager (priv->left_out, stead_wrap_layout_new ());
  gtk_widget_set_visible (priv->left_out, FALSE);
  gtk_box_append (GTK_BOX (priv->box), priv->left_out);
  gtk_box_append (GTK_BOX (priv->box), priv->missing);
  gtk_box_append (GTK_BOX (priv->box), priv->columns);
  gtk_widget_set_parent (priv->box, GTK_WIDGET (self));
}

void
stead_view_refresh (SteadView *self,
                    SteadDesk *desk)
{
  g_return_if_fail (STEAD_IS_VIEW (self) && STEAD_IS_DESK (desk));

  g_set_object (&get (self)->desk, desk);
  STEAD_VIEW_GET_CLASS (self)->refresh (self, stead_desk_get_store (desk), stead_desk_get_product (desk));
}

SteadDesk *
stead_view_get_desk (SteadView *self)
{
  g_return_val_if_fail (STEAD_IS_VIEW (self), NULL);

  return get (self)->desk;
}

static void
show_parts (SteadView *self,
            gboolean   missing)
{
  SteadViewPrivate *priv = get (self);

  gtk_widget_set_visible (priv->missing, missing);
  gtk_widget_set_visible (priv->columns, !missing);
  gtk_widget_set_visible (priv->sentence, !missing);
  gtk_widget_set_visible (priv->left_out, gtk_widget_get_first_child (priv->left_out) != NULL);
}

void
stead_view_say (SteadView  *self,
                const char *sentence,
                const char *advice)
{
  SteadViewPrivate *priv;

  g_return_if_fail (STEAD_IS_VIEW (self));
  priv = get (self);
  show_parts (self, FALSE);
  gtk_label_set_markup (GTK_LABEL (priv->sentence), sentence != NULL ? sentence : "");
  gtk_label_set_markup (GTK_LABEL (priv->advice), advice != NULL ? advice : "");
  gtk_widget_set_visible (priv->advice, advice != NULL);
}

void
stead_view_miss (SteadView  *self,
                 const char *text)
{
  g_return_if_fail (STEAD_IS_VIEW (self));

  show_parts (self, TRUE);
  gtk_widget_set_visible (get (self)->advice, FALSE);
  gtk_label_set_text (GTK_LABEL (get (self)->missing), text);
}

/* The product's own page says what is missing, with the way there. */
static void
left_out_cb (GtkWidget *button,
             SteadView *self)
{
  const char *name = gtk_button_get_label (GTK_BUTTON (button));
  g_autoptr(GPtrArray) products = stead_product_repo_list (stead_desk_get_store (get (self)->desk), FALSE, NULL);

  for (guint i = 0; products != NULL && i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];

      if (g_strcmp0 (product->name, name) == 0)
        {
          stead_desk_jump (get (self)->desk, STEAD_TARGET_PRODUCT, product->id);
          return;
        }
    }
}

void
stead_view_leave_out (SteadView *self,
                      GPtrArray *names)
{
  GtkWidget *row;

  g_return_if_fail (STEAD_IS_VIEW (self) && names != NULL);

  row = get (self)->left_out;
  stead_view_clear (row);
  if (names->len > 0)
    gtk_box_append (GTK_BOX (row), stead_view_note (_("Left out, since a cost, a price or a plan is missing:")));
  for (guint i = 0; i < names->len; i++)
    {
      GtkWidget *button = gtk_button_new_with_label (names->pdata[i]);

      gtk_widget_set_tooltip_text (button, _("See what is missing of this product"));
      g_signal_connect (button, "clicked", G_CALLBACK (left_out_cb), self);
      gtk_box_append (GTK_BOX (row), button);
    }
  gtk_widget_set_visible (row, names->len > 0);
}

void
stead_view_add_left (SteadView *self,
                     GtkWidget *widget)
{
  g_return_if_fail (STEAD_IS_VIEW (self));

  gtk_box_append (GTK_BOX (get (self)->left), widget);
}

void
stead_view_add_right (SteadView *self,
                      GtkWidget *widget)
{
  g_return_if_fail (STEAD_IS_VIEW (self));

  gtk_box_append (GTK_BOX (get (self)->right), widget);
}

/* What a button of a page shows. */
typedef struct
{
  SteadView   *view;
  const char  *paper;
  const char *(*of) (SteadView *view);
} Page;

static void
page_cb (GtkWidget *button,
         gpointer   data)
{
  const Page *page = data;

  if (get (page->view)->desk != NULL)
    stead_paper_dialog_show (button, get (page->view)->desk, page->paper, page->of != NULL ? page->of (page->view) : NULL);
}

void
stead_view_add_page (SteadView  *self,
                     SteadPlot  *plot,
                     const char *paper,
                     const char *(*of) (SteadView *self))
{
  GtkWidget *button = gtk_button_new_with_label (_("Page…"));
  Page *page = g_new (Page, 1);

  g_return_if_fail (STEAD_IS_VIEW (self));

  *page = (Page) { self, paper, of };
  gtk_widget_set_tooltip_text (button, _("The farm's own figures on a page to print"));
  g_object_set_data_full (G_OBJECT (button), "page", page, g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (page_cb), page);
  stead_plot_add (plot, button);
}

GtkWidget *
stead_view_heading (const char *text)
{
  GtkWidget *label = make_label ("heading");

  gtk_label_set_text (GTK_LABEL (label), text);
  return label;
}

GtkWidget *
stead_view_note (const char *text)
{
  GtkWidget *label = make_label ("soft");

  gtk_label_set_text (GTK_LABEL (label), text != NULL ? text : "");
  return label;
}

void
stead_view_clear (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

GtkWidget *
stead_view_grid (const char  *heading,
                 GtkWidget  **out_grid)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *grid = gtk_grid_new ();

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (card), stead_view_heading (heading));
  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  gtk_widget_add_css_class (grid, "two-way");
  gtk_box_append (GTK_BOX (card), grid);
  *out_grid = grid;
  return card;
}

void
stead_view_grid_clear (GtkWidget *grid)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (grid)) != NULL)
    gtk_grid_remove (GTK_GRID (grid), child);
}

void
stead_view_grid_put (GtkWidget  *grid,
                     int         column,
                     int         row,
                     const char *text,
                     gboolean    head,
                     gboolean    here)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), column == 0 ? GTK_JUSTIFY_LEFT : GTK_JUSTIFY_RIGHT);
  gtk_widget_set_hexpand (label, TRUE);
  if (head)
    gtk_widget_add_css_class (label, "soft");
  if (here)
    gtk_widget_add_css_class (label, "here");
  gtk_grid_attach (GTK_GRID (grid), label, column, row, 1, 1);
}
