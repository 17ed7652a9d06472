/* stead-what-if-view.c - assumptions to turn, scenarios to keep, and what matters most.
 *
 * Handles try things out; a scenario is kept by one press, as one named step.
 */
#include "config.h"

#include "app/price/stead-what-if-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/price/stead-what-if-grid.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"
#include "paper/stead-price-figure.h"

struct _SteadWhatIfView
{
  SteadView       parent_instance;

  gint64          product_id;
  SteadWhatIf    *answer;       /* (nullable) */
  SteadHandle    *handles[STEAD_N_ASSUMPTIONS];
  GtkWidget      *handle_box, *reset, *name, *keep, *drop, *error;
  SteadHandle    *frac;
  SteadPlot      *plot;
  SteadTable     *scenarios;
  SteadWhatIfGrid *grid;
  SteadWhyBox    *whys;
};

G_DEFINE_FINAL_TYPE (SteadWhatIfView, stead_what_if_view, STEAD_TYPE_VIEW)

static char *
money (SteadWhatIfView *self,
       double           cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->price->cost->farm->currency);
}

/* --- the tornado --------------------------------------------------------------------------- */

static GPtrArray *
swing_rows (SteadWhatIfView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (int i = 0; i < self->answer->n_swings; i++)
    {
      const SteadSwing *swing = &self->answer->swings[i];
      char **row = g_new0 (char *, 7);

      row[0] = g_strdup (stead_what_if_name (self->answer, swing->assumption));
      row[1] = stead_what_if_text (self->answer, swing->assumption, swing->low);
      row[2] = money (self, swing->low_cents);
      row[3] = stead_what_if_text (self->answer, swing->assumption, swing->high);
      row[4] = money (self, swing->high_cents);
      row[5] = money (self, fabs (swing->high_cents - swing->low_cents));
      g_ptr_array_add (rows, row);
    }
  return rows;
}

/* --- scenarios ---------------------------------------------------------------------------------- */

static char **
scenario_row (SteadWhatIfView     *self,
              const char          *name,
              const SteadCvp      *cvp,
              const SteadCvpFigures *figures)
{
  SteadPack pack = self->answer->price->cost->product->pack;
  char **row = g_new0 (char *, 6);

  row[0] = g_strdup (name);
  row[1] = money (self, cvp->price_cents);
  row[2] = money (self, cvp->variable_cents);
  row[3] = figures->even_whole_units < 0 ? g_strdup (_("never"))
                                         : stead_words_units (pack, (double) figures->even_whole_units);
  row[4] = money (self, figures->profit_cents);
  return row;
}

static void
row_free (gpointer row)
{
  g_strfreev (row);
}

static char *
cell_text (gpointer item,
           gpointer data)
{
  return g_strdup (((char **) stead_row_get (STEAD_ROW (item)))[GPOINTER_TO_INT (data)]);
}

static void
show_scenarios (SteadWhatIfView *self)
{
  GPtrArray *rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;
  SteadCvpFigures figures;
  SteadCvp cvp;

  stead_what_if_figures (self->answer, NULL, &cvp, &figures);
  g_ptr_array_add (rows, scenario_row (self, _("As the farm has it"), &cvp, &figures));
  for (guint i = 0; i < self->answer->scenarios->len; i++)
    {
      const SteadScenario *scenario = self->answer->scenarios->pdata[i];

      stead_what_if_figures (self->answer, scenario, &cvp, &figures);
      g_ptr_array_add (rows, scenario_row (self, scenario->name, &cvp, &figures));
    }
  model = stead_rows_from_array (rows, row_free);
  stead_table_set_model (self->scenarios, model);
  gtk_widget_set_sensitive (self->drop, self->answer->scenarios->len > 0);
}

static const SteadScenario *
find_scenario (SteadWhatIfView *self,
               const char      *name)
{
  for (guint i = 0; i < self->answer->scenarios->len; i++)
    if (g_strcmp0 (((SteadScenario *) self->answer->scenarios->pdata[i])->name, name) == 0)
      return self->answer->scenarios->pdata[i];
  return NULL;
}

/* --- showing ---------------------------------------------------------------------------------------- */

static void
show (SteadWhatIfView *self)
{
  g_autoptr(GPtrArray) whys = stead_what_if_whys (self->answer);
  gboolean turned = stead_what_if_is_turned (self->answer);

  stead_view_say (STEAD_VIEW (self), self->answer->sentence, self->answer->matters);
  stead_plot_take_figure (self->plot, stead_swing_figure_new (self->answer));
  stead_plot_show (self->plot, self->answer->matters, self->answer->price->cost->farm->currency, swing_rows (self));
  stead_why_box_set (self->whys, whys);
  gtk_widget_set_sensitive (self->reset, turned);
  gtk_widget_set_sensitive (self->keep, turned);
  stead_what_if_grid_settle (self->grid);
}

static void
sync_handles (SteadWhatIfView *self)
{
  for (int i = 0; i < stead_what_if_n (self->answer); i++)
    stead_handle_set (self->handles[i], self->answer->values[i]);
  stead_handle_set (self->frac, self->answer->frac * 100);
}

/* --- what the person does ------------------------------------------------------------------------------ */

static void
turned_cb (SteadHandle *handle,
           double       value,
           gpointer     data)
{
  SteadWhatIfView *self = data;
  int which = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (handle), "assumption"));

  if (self->answer == NULL)
    return;
  self->answer->values[which] = value;
  stead_what_if_settle (self->answer);
  show (self);
}

static void
frac_cb (SteadWhatIfView *self,
         double           value)
{
  if (self->answer == NULL)
    return;
  self->answer->frac = CLAMP (value / 100, 0.01, 0.5);
  stead_what_if_settle (self->answer);
  show (self);
}

static void
reset_cb (SteadWhatIfView *self)
{
  stead_what_if_reset (self->answer);
  sync_handles (self);
  show (self);
}

static void
activate_cb (gpointer item,
             gpointer data)
{
  SteadWhatIfView *self = data;
  char **row = stead_row_get (STEAD_ROW (item));

  stead_what_if_apply (self->answer, find_scenario (self, row[0]));
  sync_handles (self);
  show (self);
}

typedef struct
{
  gint64               product_id;
  const SteadScenario *scenario;
  const char          *name;
} Kept;

static gboolean
keep_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  const Kept *kept = data;

  return stead_scenario_repo_save (store, kept->product_id, kept->scenario, error);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  const Kept *kept = data;

  return stead_scenario_repo_delete (store, kept->product_id, kept->name, error);
}

static void
show_error (SteadWhatIfView *self,
            const GError    *error)
{
  gtk_label_set_text (GTK_LABEL (self->error), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->error, error != NULL);
}

static void
keep_cb (SteadWhatIfView *self)
{
  const char *name = gtk_editable_get_text (GTK_EDITABLE (self->name));
  g_autoptr(SteadScenario) scenario = stead_what_if_scenario (self->answer, name);
  Kept kept = { self->product_id, scenario, name };
  /* Translators: the step that Undo names; %s is a name that a student gave. */
  g_autofree char *step = g_strdup_printf (_("scenario %s"), name);
  g_autoptr(GError) error = NULL;

  if (stead_desk_act (stead_view_get_desk (STEAD_VIEW (self)), step, keep_act, &kept, &error))
    gtk_editable_set_text (GTK_EDITABLE (self->name), "");
  show_error (self, error);
}

/* (transfer full) (nullable): the scenario chosen in the table; says what to do if there is none. */
static char *
chosen_name (SteadWhatIfView *self)
{
  gpointer item = stead_table_get_selected (self->scenarios);
  char **row = item != NULL ? stead_row_get (STEAD_ROW (item)) : NULL;

  if (row != NULL && find_scenario (self, row[0]) != NULL)
    return g_strdup (row[0]);
  stead_desk_say (stead_view_get_desk (STEAD_VIEW (self)), _("Choose a scenario in the table first."), FALSE);
  return NULL;
}

typedef struct
{
  gint64      product_id;
  const char *name, *new_name;
} Renamed;

static gboolean
rename_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  const Renamed *renamed = data;

  return stead_scenario_repo_rename (store, renamed->product_id, renamed->name, renamed->new_name, error);
}

/* To the name that stands in the entry at the left. */
static void
rename_cb (SteadWhatIfView *self)
{
  g_autofree char *name = chosen_name (self), *step = NULL;
  const char *new_name = gtk_editable_get_text (GTK_EDITABLE (self->name));
  Renamed renamed = { self->product_id, name, new_name };
  g_autoptr(GError) error = NULL;

  if (name == NULL)
    return;
  /* Translators: the step that Undo names; %s is a name that a student gave. */
  step = g_strdup_printf (_("renaming scenario %s"), name);
  if (stead_desk_act (stead_view_get_desk (STEAD_VIEW (self)), step, rename_act, &renamed, &error))
    gtk_editable_set_text (GTK_EDITABLE (self->name), "");
  show_error (self, error);
}

static void
drop_cb (SteadWhatIfView *self)
{
  g_autofree char *name = chosen_name (self);
  Kept kept = { self->product_id, NULL, name };
  g_autofree char *step = NULL;
  g_autoptr(GError) error = NULL;

  if (name == NULL)
    return;
  step = g_strdup_printf (_("deleting scenario %s"), name);
  (void) !stead_desk_act (stead_view_get_desk (STEAD_VIEW (self)), step, drop_act, &kept, &error);
  show_error (self, error);
}

/* --- reading -------------------------------------------------------------------------------------------- */

static char *
handle_text (double   value,
             gpointer data)
{
  gpointer *pair = data;
  SteadWhatIfView *self = pair[0];

  return self->answer != NULL ? stead_what_if_text (self->answer, GPOINTER_TO_INT (pair[1]), value) : g_strdup ("");
}

static char *
percent_text (double   value,
              gpointer data)
{
  return stead_words_percent (value / 100, 0);
}

static void
make_handle (SteadWhatIfView *self,
             int              i)
{
  gpointer *pair = g_new (gpointer, 2);
  GtkWidget *handle;
  double low, high, step;

  pair[0] = self;
  pair[1] = GINT_TO_POINTER (i);
  handle = stead_handle_new (stead_what_if_name (self->answer, i), handle_text, pair);
  g_object_set_data_full (G_OBJECT (handle), "pair", pair, g_free);
  g_object_set_data (G_OBJECT (handle), "assumption", GINT_TO_POINTER (i));
  stead_what_if_range (self->answer, i, &low, &high, &step);
  stead_handle_range (STEAD_HANDLE (handle), low, high, step);
  g_signal_connect (handle, "turned", G_CALLBACK (turned_cb), self);
  gtk_box_append (GTK_BOX (self->handle_box), handle);
  self->handles[i] = STEAD_HANDLE (handle);
}

static void
stead_what_if_view_refresh (SteadView  *view,
                            SteadStore *store,
                            gint64      product_id)
{
  SteadWhatIfView *self = STEAD_WHAT_IF_VIEW (view);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWhatIf) old = g_steal_pointer (&self->answer);

  stead_plot_take_figure (self->plot, NULL);
  stead_what_if_grid_show (self->grid, NULL);
  if (product_id != 0)
    self->answer = stead_what_if_new (store, product_id, stead_desk_get_period (stead_view_get_desk (view)), &error);
  if (self->answer == NULL)
    {
      stead_view_miss (view, error != NULL ? error->message : _("First make a product under “One product”."));
      return;
    }
  /* What was turned stays turned, as long as the product is the same. */
  for (int i = 0; old != NULL && self->product_id == product_id && i < STEAD_N_ASSUMPTIONS; i++)
    if (fabs (old->values[i] - old->farm[i]) > 1e-9)
      self->answer->values[i] = old->values[i];
  if (old != NULL)
    self->answer->frac = old->frac;
  self->product_id = product_id;
  stead_what_if_settle (self->answer);
  stead_view_clear (self->handle_box);
  for (int i = 0; i < stead_what_if_n (self->answer); i++)
    make_handle (self, i);
  stead_what_if_grid_show (self->grid, self->answer);
  sync_handles (self);
  show_scenarios (self);
  show (self);
}

/* --- widget ---------------------------------------------------------------------------------------------- */

static void
stead_what_if_view_finalize (GObject *object)
{
  SteadWhatIfView *self = STEAD_WHAT_IF_VIEW (object);

  g_clear_pointer (&self->answer, stead_what_if_free);
  G_OBJECT_CLASS (stead_what_if_view_parent_class)->finalize (object);
}

static void
stead_what_if_view_class_init (SteadWhatIfViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_what_if_view_finalize;
  STEAD_VIEW_CLASS (klass)->refresh = stead_what_if_view_refresh;
}

static GtkWidget *
make_card (void)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_add_css_class (card, "card");
  return card;
}

static GtkWidget *
make_button (SteadWhatIfView *self,
             const char      *label,
             GCallback        clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, self);
  return button;
}

static void
add_left (SteadWhatIfView *self)
{
  GtkWidget *card = make_card ();

  gtk_box_append (GTK_BOX (card), stead_view_heading (_("What could be different")));
  self->handle_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_box_append (GTK_BOX (card), self->handle_box);
  self->reset = make_button (self, _("Reset to the log"), G_CALLBACK (reset_cb));
  gtk_box_append (GTK_BOX (card), self->reset);
  self->name = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->name), _("Name of this scenario"));
  stead_ui_name (self->name, _("Name of this scenario"));
  gtk_box_append (GTK_BOX (card), self->name);
  self->keep = make_button (self, _("Keep as a scenario"), G_CALLBACK (keep_cb));
  gtk_box_append (GTK_BOX (card), self->keep);
  self->error = stead_view_note (NULL);
  gtk_widget_add_css_class (self->error, "message");
  gtk_widget_set_visible (self->error, FALSE);
  gtk_box_append (GTK_BOX (card), self->error);
  stead_view_add_left (STEAD_VIEW (self), card);
}

static const char *
product_name (SteadView *view)
{
  SteadWhatIfView *self = STEAD_WHAT_IF_VIEW (view);

  return self->answer != NULL ? self->answer->price->cost->product->name : NULL;
}

static void
add_tornado (SteadWhatIfView *self)
{
  const char *columns[] = { _("What changes"), _("Down to"), _("Then left"), _("Up to"), _("Then left"), _("Apart"), NULL };

  self->plot = STEAD_PLOT (stead_plot_new (_("What matters most"), _("Profit when one thing changes"), columns));
  stead_plot_set_height (self->plot, 250);
  self->frac = STEAD_HANDLE (stead_handle_new (_("Each moves by"), percent_text, NULL));
  stead_handle_range (self->frac, 1, 50, 1);
  gtk_widget_set_size_request (GTK_WIDGET (self->frac), 180, -1);
  g_signal_connect_swapped (self->frac, "turned", G_CALLBACK (frac_cb), self);
  stead_plot_add (self->plot, GTK_WIDGET (self->frac));
  stead_view_add_page (STEAD_VIEW (self), self->plot, "scenarios", product_name);
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->plot));
}

static void
add_scenarios (SteadWhatIfView *self)
{
  const char *columns[] = { _("Scenario"), _("Price"), _("Cost of one"), _("Break-even"), C_("column of a table", "Left") };
  GtkWidget *card = make_card (), *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *heading = stead_view_heading (_("Scenarios beside the farm's own figures"));

  gtk_widget_set_layout_manager (head, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (card), heading);
  gtk_box_append (GTK_BOX (head), make_button (self, _("Rename the scenario"), G_CALLBACK (rename_cb)));
  self->drop = make_button (self, _("Delete the scenario"), G_CALLBACK (drop_cb));
  gtk_box_append (GTK_BOX (head), self->drop);
  gtk_box_append (GTK_BOX (card), head);
  self->scenarios = STEAD_TABLE (stead_table_new (_("Scenarios beside the farm's own figures")));
  for (int i = 0; i < (int) G_N_ELEMENTS (columns); i++)
    stead_table_add_column (self->scenarios, columns[i], i > 0, TRUE, cell_text, NULL, NULL, GINT_TO_POINTER (i));
  stead_table_set_activate (self->scenarios, activate_cb, self);
  gtk_widget_set_size_request (GTK_WIDGET (self->scenarios), -1, 150);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->scenarios));
  gtk_box_append (GTK_BOX (card), stead_view_note (_("Return on a scenario turns the handles to it; kept under another "
                                                     "name, it is a copy. A new name for “Rename the scenario” is typed at the "
                                                     "left.")));
  stead_view_add_right (STEAD_VIEW (self), card);
}

static void
stead_what_if_view_init (SteadWhatIfView *self)
{

  add_left (self);
  add_tornado (self);
  add_scenarios (self);
  self->grid = STEAD_WHAT_IF_GRID (stead_what_if_grid_new ());
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->grid));
  stead_view_add_right (STEAD_VIEW (self), stead_why_box_new_folded (&self->whys));
}

GtkWidget *
stead_what_if_view_new (void)
{
  return g_object_new (STEAD_TYPE_WHAT_IF_VIEW, NULL);
}
