/* stead-joint-view.c - one cost shared by what comes of it, several ways side by side.
 *
 * Quantities, prices and further cost of each product are handles; the chart holds the ways to
 * share.  Figures that are not the log's, and the way that was chosen, can be kept.
 */
#include "config.h"

#include "app/price/stead-joint-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-joint-answer.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "core/stead-us-units.h"
#include "paper/stead-price-figure.h"

#define MIN_CHART 210

struct _SteadJointView
{
  SteadView         parent_instance;

  GPtrArray        *batches;    /* (nullable): of SteadBatch, as the list of choices has them */
  gint64            batch_id;   /* 0: none chosen yet */
  SteadJointAnswer *answer;     /* (nullable) */

  GtkWidget        *batch, *way, *handles, *keep, *reset, *error, *caution, *grid;
  SteadPlot        *plot;
  SteadWhyBox      *whys;
  gboolean          filling;    /* the code chooses, not the person */
};

G_DEFINE_FINAL_TYPE (SteadJointView, stead_joint_view, STEAD_TYPE_VIEW)

static SteadJointPart *
part_at (SteadJointView *self,
         guint           i)
{
  return self->answer->parts->pdata[i];
}

static char *
money (SteadJointView *self,
       double          cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->farm->currency);
}

/* --- showing ------------------------------------------------------------------------------- */

static char *
share_or_dash (SteadJointView       *self,
               const SteadJointPart *part,
               SteadJointMethod      method)
{
  return self->answer->usable[method] ? money (self, (double) part->share_cents[method]) : g_strdup ("–");
}

static GPtrArray *
make_rows (SteadJointView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; i < self->answer->parts->len; i++)
    {
      const SteadJointPart *part = part_at (self, i);
      char **row = g_new0 (char *, STEAD_N_JOINT_METHODS + 5);
      double unit = stead_joint_unit_cents (part, self->answer->method);
      int at = 0;

      row[at++] = g_strdup (part->name);
      row[at++] = stead_words_units (part->pack, round (part->value[STEAD_JOINT_QUANTITY] * 10) / 10);
      for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
        row[at++] = share_or_dash (self, part, method);
      row[at++] = isfinite (unit) && self->answer->usable[self->answer->method] ? money (self, unit) : g_strdup ("–");
      row[at++] = isfinite (part->more_cents) ? money (self, part->more_cents) : g_strdup ("–");
      g_ptr_array_add (rows, row);
    }
  return rows;
}

/* --- what one then costs, by each way --- */

static char *
unit_text (SteadJointView       *self,
           const SteadJointPart *part,
           SteadJointMethod      method)
{
  double unit = stead_joint_unit_cents (part, method);
  g_autofree char *cents = NULL;

  if (!isfinite (unit) || !self->answer->usable[method])
    return g_strdup ("–");
  cents = money (self, unit);
  return g_strdup_printf (C_("price of a unit", "%s %s"), cents, stead_words_per_unit (part->pack));
}

static void
show_grid (SteadJointView *self)
{
  int row = 1;

  stead_view_grid_clear (self->grid);
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    stead_view_grid_put (self->grid, (int) method + 1, 0, stead_joint_method_name (method), TRUE, FALSE);
  for (guint i = 0; i < self->answer->parts->len; i++)
    {
      const SteadJointPart *part = part_at (self, i);

      if (!part->carries)
        continue;
      stead_view_grid_put (self->grid, 0, row, part->name, TRUE, FALSE);
      for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
        {
          g_autofree char *text = unit_text (self, part, method);

          stead_view_grid_put (self->grid, (int) method + 1, row, text, FALSE, method == self->answer->method);
        }
      row++;
    }
}

static gboolean
is_kept (SteadJointView *self)
{
  g_autoptr(SteadJointPlan) plan = stead_joint_answer_plan (self->answer);

  return plan->figures->len > 0;
}

static void
show (SteadJointView *self)
{
  g_autoptr(GPtrArray) whys = stead_joint_answer_whys (self->answer);

  stead_view_say (STEAD_VIEW (self), self->answer->sentence, self->answer->advice);
  gtk_label_set_text (GTK_LABEL (self->caution), self->answer->caution);
  stead_plot_take_figure (self->plot, stead_joint_figure_new (self->answer));
  stead_plot_show (self->plot, self->answer->sentence, self->answer->farm->currency, make_rows (self));
  stead_why_box_set (self->whys, whys);
  show_grid (self);
  gtk_widget_set_sensitive (self->reset, is_kept (self));
}

/* --- handles ----------------------------------------------------------------------------------- */

typedef struct
{
  SteadJointView  *view;
  guint            part;
  SteadJointField  field;
} Turn;

/* What a handle shows beside its name; the pound and the kilogram as the farm weighs. */
static char *
turn_text (double   value,
           gpointer data)
{
  const Turn *turn = data;
  const SteadJointPart *part;
  gboolean us;
  g_autofree char *cents = NULL;

  if (turn->view->answer == NULL)
    return g_strdup ("");
  part = part_at (turn->view, turn->part);
  us = turn->view->answer->farm->units == STEAD_UNITS_US;
  if (turn->field == STEAD_JOINT_QUANTITY)
    return stead_words_units (part->pack, round (value));
  if (turn->field == STEAD_JOINT_WEIGHT)
    return stead_quantity_format (value, stead_unit_by_id (us ? "lb" : "kg"));
  cents = money (turn->view, value);
  /* Translators: money, "a dozen". */
  return g_strdup_printf (C_("price of a unit", "%s %s"), cents, stead_words_per_unit (part->pack));
}

static void
turned_cb (SteadHandle *handle,
           double       value,
           gpointer     data)
{
  const Turn *turn = data;

  if (turn->view->answer == NULL)
    return;
  part_at (turn->view, turn->part)->value[turn->field] = value;
  stead_joint_answer_settle (turn->view->answer);
  show (turn->view);
}

static const char *
field_name (SteadJointField field)
{
  switch (field)
    {
    case STEAD_JOINT_QUANTITY: return C_("of a product", "amount");
    case STEAD_JOINT_WEIGHT: return C_("of a product", "weight of one");
    case STEAD_JOINT_SPLIT: return C_("of a product", "price as it comes");
    case STEAD_JOINT_FINAL: return C_("of a product", "price after more work");
    case STEAD_JOINT_FURTHER: return C_("of a product", "cost of that work");
    default: g_return_val_if_reached ("");
    }
}

static void
set_range (SteadJointView       *self,
           const SteadJointPart *part,
           SteadHandle          *handle,
           SteadJointField       field)
{
  double value = part->value[field], step = stead_currency_digits (self->answer->farm->currency) > 0 ? 5 : 1;
  double price = MAX (part->value[STEAD_JOINT_SPLIT], part->value[STEAD_JOINT_FINAL]);

  if (field == STEAD_JOINT_QUANTITY)
    stead_handle_range (handle, 0, MAX (ceil (MAX (value, part->log[field]) * 2.5), 10), 1);
  else if (field == STEAD_JOINT_WEIGHT)
    stead_handle_range (handle, 0, MAX (ceil (value * 3), 5), self->answer->farm->units == STEAD_UNITS_US ? STEAD_POUND_KG / 10 : 0.05);
  else
    stead_handle_range (handle, 0, MAX (ceil (MAX (price, value) * 3 / step) * step, 100 * step), step);
  stead_handle_set (handle, value);
}

static GtkWidget *
make_handle (SteadJointView  *self,
             guint            i,
             SteadJointField  field)
{
  Turn *turn = g_new (Turn, 1);
  g_autofree char *name = NULL;
  GtkWidget *handle;

  *turn = (Turn) { self, i, field };
  /* Translators: a product, what is turned: "Eggs: price as it comes". */
  name = g_strdup_printf (C_("handle", "%s: %s"), part_at (self, i)->name, field_name (field));
  handle = stead_handle_new (name, turn_text, turn);
  g_object_set_data_full (G_OBJECT (handle), "turn", turn, g_free);
  set_range (self, part_at (self, i), STEAD_HANDLE (handle), field);
  g_signal_connect (handle, "turned", G_CALLBACK (turned_cb), turn);
  return handle;
}

static gboolean
is_turned (const SteadJointPart *part,
           SteadJointField       field)
{
  gboolean by_weight = part->pack == STEAD_PACK_POUND || part->pack == STEAD_PACK_KILOGRAM;

  if (!part->carries)
    return FALSE;
  if (field == STEAD_JOINT_WEIGHT)
    return !by_weight;
  return field != STEAD_JOINT_SPLIT || !part->own;
}

static void
fill_handles (SteadJointView *self)
{
  stead_view_clear (self->handles);
  for (guint i = 0; i < self->answer->parts->len; i++)
    for (SteadJointField field = 0; field < STEAD_N_JOINT_FIELDS; field++)
      if (is_turned (part_at (self, i), field))
        gtk_box_append (GTK_BOX (self->handles), make_handle (self, i, field));
}

/* --- what the person does ----------------------------------------------------------------------- */

static void
show_error (SteadJointView *self,
            const GError   *error)
{
  gtk_label_set_text (GTK_LABEL (self->error), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->error, error != NULL);
}

static void
way_cb (SteadJointView *self)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->way));

  if (self->filling || self->answer == NULL || at >= STEAD_N_JOINT_METHODS)
    return;
  self->answer->method = (SteadJointMethod) at;
  stead_joint_answer_settle (self->answer);
  show (self);
}

static void
reset_cb (SteadJointView *self)
{
  stead_joint_answer_reset (self->answer);
  fill_handles (self);
  show (self);
}

typedef struct
{
  gint64                batch_id;
  const SteadJointPlan *plan;
} Kept;

static gboolean
keep_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  const Kept *kept = data;

  return stead_joint_repo_save (store, kept->batch_id, kept->plan, error);
}

static void
keep_cb (SteadJointView *self)
{
  g_autoptr(SteadJointPlan) plan = stead_joint_answer_plan (self->answer);
  Kept kept = { self->batch_id, plan };
  /* Translators: the step that Undo names; %s is a batch. */
  g_autofree char *step = g_strdup_printf (_("how %s shares its cost"), self->answer->batch->name);
  g_autoptr(GError) error = NULL;

  (void) !stead_desk_act (stead_view_get_desk (STEAD_VIEW (self)), step, keep_act, &kept, &error);
  show_error (self, error);
}

/* --- reading ---------------------------------------------------------------------------------------- */

static void
clear (SteadJointView *self)
{
  stead_view_clear (self->handles);
  stead_plot_take_figure (self->plot, NULL);
  g_clear_pointer (&self->answer, stead_joint_answer_free);
}

static void
load (SteadJointView *self)
{
  g_autoptr(GError) error = NULL;

  clear (self);
  self->answer = stead_joint_answer_new (stead_desk_get_store (stead_view_get_desk (STEAD_VIEW (self))), self->batch_id, &error);
  gtk_widget_set_sensitive (self->keep, self->answer != NULL);
  gtk_widget_set_sensitive (self->reset, FALSE);
  gtk_widget_set_sensitive (self->way, self->answer != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->plot), self->answer != NULL);
  if (self->answer == NULL)
    {
      /* The list stays, to choose another one. */
      g_autofree char *text = g_markup_escape_text (error->message, -1);
      g_autoptr(GPtrArray) none = g_ptr_array_new ();

      stead_view_say (STEAD_VIEW (self), text, NULL);
      gtk_label_set_text (GTK_LABEL (self->caution), "");
      stead_why_box_set (self->whys, none);
      gtk_widget_set_visible (gtk_widget_get_parent (self->grid), FALSE);
      return;
    }
  gtk_widget_set_visible (gtk_widget_get_parent (self->grid), TRUE);
  self->filling = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->way), self->answer->method);
  self->filling = FALSE;
  fill_handles (self);
  show (self);
}

static void
batch_cb (SteadJointView *self)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->batch));

  if (self->filling || self->batches == NULL || at >= self->batches->len)
    return;
  self->batch_id = ((const SteadBatch *) self->batches->pdata[at])->id;
  load (self);
}

/* The batch that was looked at, else that of the chosen product, else the first. */
static guint
find_batch (SteadJointView *self,
            SteadStore     *store,
            gint64          product_id)
{
  g_autoptr(SteadProduct) product = product_id != 0 ? stead_product_repo_get (store, product_id, NULL) : NULL;

  for (guint i = 0; i < self->batches->len; i++)
    if (((const SteadBatch *) self->batches->pdata[i])->id == self->batch_id)
      return i;
  for (guint i = 0; product != NULL && i < self->batches->len; i++)
    if (((const SteadBatch *) self->batches->pdata[i])->id == product->batch_id)
      return i;
  return 0;
}

static void
fill_batches (SteadJointView *self,
              guint           chosen)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < self->batches->len; i++)
    gtk_string_list_append (names, ((const SteadBatch *) self->batches->pdata[i])->name);
  self->filling = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->batch), G_LIST_MODEL (names));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->batch), chosen);
  self->filling = FALSE;
  stead_ui_name (gtk_widget_get_first_child (self->batch), _("What all of it comes of"));
}

static void
stead_joint_view_refresh (SteadView  *view,
                          SteadStore *store,
                          gint64      product_id)
{
  SteadJointView *self = STEAD_JOINT_VIEW (view);
  g_autoptr(GError) error = NULL;
  guint at;

  g_clear_pointer (&self->batches, g_ptr_array_unref);
  self->batches = stead_joint_batches (store, &error);
  if (self->batches == NULL || self->batches->len == 0)
    {
      clear (self);
      stead_view_miss (view, error != NULL ? error->message
                       : _("Here stands how eggs and hens, fish and plants, or first and second grade share one cost. "
                           "Add a flock, fish with plants on their water, or a crop in Raise."));
      return;
    }
  at = find_batch (self, store, product_id);
  fill_batches (self, at);
  self->batch_id = ((const SteadBatch *) self->batches->pdata[at])->id;
  load (self);
}

/* --- widget ------------------------------------------------------------------------------------------- */

static void
stead_joint_view_finalize (GObject *object)
{
  SteadJointView *self = STEAD_JOINT_VIEW (object);

  g_clear_pointer (&self->answer, stead_joint_answer_free);
  g_clear_pointer (&self->batches, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_joint_view_parent_class)->finalize (object);
}

static void
stead_joint_view_class_init (SteadJointViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_joint_view_finalize;
  STEAD_VIEW_CLASS (klass)->refresh = stead_joint_view_refresh;
}

static GtkWidget *
add_choice (SteadJointView *self,
            GtkWidget      *card,
            const char     *label,
            GCallback       chosen)
{
  GtkWidget *choice = gtk_drop_down_new (NULL, NULL);

  stead_ui_name (choice, label);
  gtk_box_append (GTK_BOX (card), stead_view_heading (label));
  gtk_box_append (GTK_BOX (card), choice);
  g_signal_connect_swapped (choice, "notify::selected", chosen, self);
  return choice;
}

static GtkWidget *
add_button (SteadJointView *self,
            GtkWidget      *card,
            const char     *label,
            GCallback       clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (card), button);
  return button;
}

static void
add_left (SteadJointView *self)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  const char *ways[STEAD_N_JOINT_METHODS + 1] = { NULL };
  g_autoptr(GtkStringList) names = NULL;

  gtk_widget_add_css_class (card, "card");
  self->batch = add_choice (self, card, _("What all of it comes of"), G_CALLBACK (batch_cb));
  self->way = add_choice (self, card, _("Way to share the cost"), G_CALLBACK (way_cb));
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    ways[method] = stead_joint_method_name (method);
  names = gtk_string_list_new (ways);
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->way), G_LIST_MODEL (names));
  stead_ui_name (gtk_widget_get_first_child (self->way), _("Way to share the cost"));
  self->handles = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_box_append (GTK_BOX (card), self->handles);
  self->keep = add_button (self, card, _("Keep way and figures"), G_CALLBACK (keep_cb));
  self->reset = add_button (self, card, _("Reset to the log"), G_CALLBACK (reset_cb));
  self->error = stead_view_note (NULL);
  gtk_widget_add_css_class (self->error, "message");
  gtk_widget_set_visible (self->error, FALSE);
  gtk_box_append (GTK_BOX (card), self->error);
  stead_view_add_left (STEAD_VIEW (self), card);
}

static const char *
batch_name (SteadView *view)
{
  SteadJointView *self = STEAD_JOINT_VIEW (view);

  return self->answer != NULL ? self->answer->batch->name : NULL;
}

static void
stead_joint_view_init (SteadJointView *self)
{
  const char *columns[] = { _("Product"), _("How much"), stead_joint_method_name (STEAD_JOINT_PHYSICAL),
                            stead_joint_method_name (STEAD_JOINT_SPLIT_OFF_VALUE), stead_joint_method_name (STEAD_JOINT_NRV),
                            stead_joint_method_name (STEAD_JOINT_CONSTANT_MARGIN), _("One then costs"),
                            _("More work adds"), NULL };
  GtkWidget *note;

  add_left (self);
  self->plot = STEAD_PLOT (stead_plot_new (_("Who bears how much of it"), _("One cost, shared in several ways"), columns));
  stead_plot_set_height (self->plot, MIN_CHART);
  stead_view_add_page (STEAD_VIEW (self), self->plot, "shared-cost", batch_name);
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->plot));
  note = stead_view_grid (_("What one then costs, with its own further work"), &self->grid);
  gtk_box_append (GTK_BOX (note), stead_view_note (_("A shared cost cannot tell whether to work on something further: it is spent "
                                                     "either way. Look at what the work adds.")));
  self->caution = stead_view_note (NULL);
  gtk_box_append (GTK_BOX (note), self->caution);
  stead_view_add_right (STEAD_VIEW (self), note);
  stead_view_add_right (STEAD_VIEW (self), stead_why_box_new_folded (&self->whys));
}

GtkWidget *
stead_joint_view_new (void)
{
  return g_object_new (STEAD_TYPE_JOINT_VIEW, NULL);
}
