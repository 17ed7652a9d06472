/* stead-statement-sheet.c - one statement as a sheet, its figures open their entries; beside it
 * the same as a chart.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-statement-sheet.h"

#include "app/keep/stead-entries-dialog.h"
#include "app/keep/stead-statement-chart.h"
#include "app/stead-columns-layout.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

/* px: two columns on the smallest screen, where figures are near enough to their words to
 * be read across */
#define SHEET_WIDTH 440

enum { COLUMN_LABEL, COLUMN_BEFORE, COLUMN_CENTS };

struct _SteadStatementSheet
{
  GtkWidget             parent_instance;

  SteadDesk            *desk;
  SteadStatementAnswer *answer;   /* (nullable) */
  GtkWidget            *scrolled, *grid, *chart;
};

G_DEFINE_FINAL_TYPE (SteadStatementSheet, stead_statement_sheet, GTK_TYPE_WIDGET)

static void
figure_cb (GtkWidget *button,
           gpointer   data)
{
  SteadStatementSheet *self = STEAD_STATEMENT_SHEET (gtk_widget_get_ancestor (button, STEAD_TYPE_STATEMENT_SHEET));

  stead_entries_dialog_show (GTK_WIDGET (self), self->desk, self->answer, data);
}

static GtkWidget *
make_label (const char *text,
            float       xalign,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/* A figure with entries behind it opens them. */
static GtkWidget *
make_figure (SteadStatementSheet      *self,
             const SteadStatementLine *line,
             gint64                    cents,
             gboolean                  opens)
{
  g_autofree char *text = stead_money_format (cents, self->answer->farm->currency);
  g_autofree char *name = NULL;
  GtkWidget *button;

  if (!opens || line->entries->len == 0)
    {
      g_autofree char *padded = g_strconcat (text, "\u2002", NULL);

      /* In line with the buttons, while a rule over a total still runs through. */
      return make_label (padded, 1, "figure");
    }
  button = gtk_button_new_with_label (text);
  /* Translators: a line of a statement and its figure: “Sales: $61.50, show the entries”. */
  name = g_strdup_printf (_("%s: %s, show the entries"), line->label, text);
  stead_ui_name (button, name);
  gtk_widget_set_tooltip_text (button, _("Show the entries behind it"));
  gtk_widget_add_css_class (button, "link");
  gtk_widget_add_css_class (button, "figure");
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  g_signal_connect (button, "clicked", G_CALLBACK (figure_cb), (gpointer) line);
  return button;
}

static void
add_line (SteadStatementSheet      *self,
          const SteadStatementLine *line,
          int                       row)
{
  GtkGrid *grid = GTK_GRID (self->grid);
  GtkWidget *cells[3] = { NULL };

  cells[COLUMN_LABEL] = make_label (line->label, 0, line->is_apart ? "soft" : "line");
  stead_ui_wrap (GTK_LABEL (cells[COLUMN_LABEL]));
  gtk_widget_set_hexpand (cells[COLUMN_LABEL], TRUE);
  if (line->part == STEAD_STATEMENT_BALANCE)
    cells[COLUMN_BEFORE] = make_figure (self, line, line->before_cents, FALSE);
  cells[COLUMN_CENTS] = make_figure (self, line, line->cents, TRUE);
  for (int i = 0; i < (int) G_N_ELEMENTS (cells); i++)
    {
      if (cells[i] == NULL && line->is_total)
        cells[i] = gtk_label_new (NULL);
      if (cells[i] == NULL)
        continue;
      if (line->is_total)
        gtk_widget_add_css_class (cells[i], "total");
      gtk_grid_attach (grid, cells[i], i, row, 1, 1);
    }
}

static void
add_head (SteadStatementSheet *self,
          const char          *text,
          int                  column)
{
  GtkWidget *label = make_label (text, 1, "heading");

  gtk_widget_set_margin_start (label, 24);
  gtk_widget_set_margin_end (label, 7);
  gtk_grid_attach (GTK_GRID (self->grid), label, column, 0, 1, 1);
}

static void
add_heads (SteadStatementSheet *self)
{
  g_autofree char *before = stead_day_format (self->answer->from - 1, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *end = stead_day_format (self->answer->to, STEAD_DAY_STYLE_MEDIUM);

  add_head (self, before, COLUMN_BEFORE);
  add_head (self, end, COLUMN_CENTS);
}

void
stead_statement_sheet_set (SteadStatementSheet  *self,
                           SteadDesk            *desk,
                           SteadStatementAnswer *answer,
                           SteadStatementPart    part)
{
  g_return_if_fail (STEAD_IS_STATEMENT_SHEET (self));

  stead_ui_drop_children (self->grid);
  stead_statement_chart_set (STEAD_STATEMENT_CHART (self->chart), NULL, part);
  g_clear_pointer (&self->answer, stead_statement_answer_free);
  g_set_object (&self->desk, desk);
  self->answer = answer;
  if (answer == NULL)
    return;
  if (part == STEAD_STATEMENT_BALANCE)
    add_heads (self);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadStatementLine *line = answer->lines->pdata[i];

      if (line->part == part)
        add_line (self, line, (int) i + 1);
    }
  stead_statement_chart_set (STEAD_STATEMENT_CHART (self->chart), answer, part);
}

static void
stead_statement_sheet_dispose (GObject *object)
{
  SteadStatementSheet *self = STEAD_STATEMENT_SHEET (object);

  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->answer, stead_statement_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_statement_sheet_parent_class)->dispose (object);
}

static void
stead_statement_sheet_class_init (SteadStatementSheetClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_statement_sheet_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_statement_sheet_init (SteadStatementSheet *self)
{
  GtkWidget *columns = g_object_new (GTK_TYPE_BOX, "layout-manager",
                                     stead_columns_layout_new (2, SHEET_WIDTH, TRUE), NULL);

  self->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 3);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 0);
  gtk_widget_set_size_request (self->grid, SHEET_WIDTH, -1);
  gtk_widget_set_valign (self->grid, GTK_ALIGN_START);
  self->chart = stead_statement_chart_new ();
  gtk_widget_set_parent (self->grid, columns);
  gtk_widget_set_parent (self->chart, columns);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), columns);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
}

GtkWidget *
stead_statement_sheet_new (void)
{
  return g_object_new (STEAD_TYPE_STATEMENT_SHEET, NULL);
}
