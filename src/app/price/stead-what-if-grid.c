/* stead-what-if-grid.c - what is left when two things change. */
#include "config.h"

#include "app/price/stead-what-if-grid.h"

#include <glib/gi18n-lib.h>

#include "app/price/stead-view.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"

#define GRID_SIDE 5      /* values of each of the two */
#define GRID_STEP 0.1    /* between them */

struct _SteadWhatIfGrid
{
  GtkWidget    parent_instance;

  SteadWhatIf *answer;      /* (nullable) (transfer none) */
  GtkWidget   *card, *picks[2], *grid;
};

G_DEFINE_FINAL_TYPE (SteadWhatIfGrid, stead_what_if_grid, GTK_TYPE_WIDGET)

static char *
money (SteadWhatIfGrid *self,
       double           cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->price->cost->farm->currency);
}

static double
grid_value (SteadWhatIfGrid *self,
            SteadAssumption  which,
            int              i)
{
  return self->answer->values[which] * (1 + GRID_STEP * (i - GRID_SIDE / 2));
}

static GtkWidget *
grid_label (const char *text,
            gboolean    head,
            gboolean    loss)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_set_hexpand (label, TRUE);
  if (head)
    gtk_widget_add_css_class (label, "soft");
  if (loss)
    gtk_widget_add_css_class (label, "message");
  return label;
}

static void
clear_grid (GtkWidget *grid)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (grid)) != NULL)
    gtk_grid_remove (GTK_GRID (grid), child);
}

static void
show_grid (SteadWhatIfGrid *self)
{
  SteadAssumption a = (SteadAssumption) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->picks[0]));
  SteadAssumption b = (SteadAssumption) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->picks[1]));

  clear_grid (self->grid);
  if (a >= STEAD_N_ASSUMPTIONS || b >= STEAD_N_ASSUMPTIONS)
    return;
  for (int i = 0; i < GRID_SIDE; i++)
    {
      g_autofree char *across = stead_what_if_text (self->answer, b, grid_value (self, b, i));
      g_autofree char *down = stead_what_if_text (self->answer, a, grid_value (self, a, i));

      gtk_grid_attach (GTK_GRID (self->grid), grid_label (across, TRUE, FALSE), i + 1, 0, 1, 1);
      gtk_grid_attach (GTK_GRID (self->grid), grid_label (down, TRUE, FALSE), 0, i + 1, 1, 1);
      for (int j = 0; j < GRID_SIDE; j++)
        {
          double profit = stead_what_if_profit (self->answer, a, grid_value (self, a, i), b, grid_value (self, b, j));
          g_autofree char *text = money (self, profit);
          GtkWidget *label = grid_label (text, FALSE, profit < -0.5);

          if (i == GRID_SIDE / 2 && j == GRID_SIDE / 2)
            gtk_widget_add_css_class (label, "here");
          gtk_grid_attach (GTK_GRID (self->grid), label, j + 1, i + 1, 1, 1);
        }
    }
}

static void
picked_cb (SteadWhatIfGrid *self)
{
  if (self->answer != NULL)
    show_grid (self);
}

static void
fill_picks (SteadWhatIfGrid *self)
{
  const char *names[STEAD_N_ASSUMPTIONS + 1] = { NULL };

  for (int i = 0; i < stead_what_if_n (self->answer); i++)
    names[i] = stead_what_if_name (self->answer, i);
  for (int k = 0; k < 2; k++)
    {
      guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->picks[k]));
      g_autoptr(GtkStringList) list = gtk_string_list_new (names);

      g_signal_handlers_block_by_func (self->picks[k], picked_cb, self);
      gtk_drop_down_set_model (GTK_DROP_DOWN (self->picks[k]), G_LIST_MODEL (list));
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->picks[k]), at >= (guint) stead_what_if_n (self->answer) ? (guint) k : at);
      g_signal_handlers_unblock_by_func (self->picks[k], picked_cb, self);
      stead_ui_name (gtk_widget_get_first_child (self->picks[k]), k == 0 ? _("Down the table") : _("Across the table"));
    }
}

/* --- widget --------------------------------------------------------------------------------- */

static void
stead_what_if_grid_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_what_if_grid_parent_class)->dispose (object);
}

static void
stead_what_if_grid_class_init (SteadWhatIfGridClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_what_if_grid_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
stead_what_if_grid_init (SteadWhatIfGrid *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (self->card, "card");
  gtk_widget_set_parent (self->card, GTK_WIDGET (self));
  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (self->card), stead_view_heading (_("What is left when two things change")));
  for (int k = 0; k < 2; k++)
    {
      self->picks[k] = gtk_drop_down_new (NULL, NULL);
      stead_ui_name (self->picks[k], k == 0 ? _("Down the table") : _("Across the table"));
      g_signal_connect_swapped (self->picks[k], "notify::selected", G_CALLBACK (picked_cb), self);
      gtk_box_append (GTK_BOX (row), gtk_label_new (k == 0 ? _("Down the table") : _("Across the table")));
      gtk_box_append (GTK_BOX (row), self->picks[k]);
    }
  gtk_box_append (GTK_BOX (self->card), row);
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 4);
  gtk_widget_add_css_class (self->grid, "two-way");
  gtk_box_append (GTK_BOX (self->card), self->grid);
}

GtkWidget *
stead_what_if_grid_new (void)
{
  return g_object_new (STEAD_TYPE_WHAT_IF_GRID, NULL);
}

void
stead_what_if_grid_show (SteadWhatIfGrid *self,
                         SteadWhatIf     *answer)
{
  g_return_if_fail (STEAD_IS_WHAT_IF_GRID (self));

  self->answer = answer;
  if (answer == NULL)
    return;
  fill_picks (self);
  show_grid (self);
}

void
stead_what_if_grid_settle (SteadWhatIfGrid *self)
{
  g_return_if_fail (STEAD_IS_WHAT_IF_GRID (self));

  if (self->answer != NULL)
    show_grid (self);
}
