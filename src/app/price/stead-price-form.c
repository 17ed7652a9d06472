/* stead-price-form.c - the fields beside the handles, and what is kept of them.
 *
 * Invariants:
 *  1. The price, and the plan with its target, are kept by one press each, as one
 *     named step each; unit cost and day's costs are only tried out, since they
 *     follow from receipts and from the stall costs of the product.
 *  2. Nothing above the advice changes its height while a handle is dragged.
 */
#include "config.h"

#include "app/price/stead-price-form.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/price/stead-knob-row.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-product-repo.h"

struct _SteadPriceForm
{
  GtkWidget        parent_instance;

  SteadDesk       *desk;
  SteadPriceModel *model;

  GtkBox          *price_rows, *plan_rows, *cost_rows;
  GtkWidget       *reset;
  GtkWidget       *keep_plan;
  GtkWidget       *note;
  GtkWidget       *use;
  GtkWidget       *error;
  GtkWidget       *advice;
};

G_DEFINE_FINAL_TYPE (SteadPriceForm, stead_price_form, GTK_TYPE_WIDGET)

/* Keeping ------------------------------------------------------------------------ */

typedef struct
{
  gint64      product_id;
  gint64      cents;
  const char *note;       /* (nullable) */
  gint64      planned;
  gint64      target;
} Kept;

static gboolean
set_price (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const Kept *kept = data;

  return stead_product_repo_set_price (store, kept->product_id, stead_store_get_today (store), kept->cents,
                                       kept->note, error);
}

static gboolean
save_plan (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const Kept *kept = data;
  g_autoptr(SteadProduct) product = stead_product_repo_get (store, kept->product_id, error);

  if (product == NULL)
    return FALSE;
  product->planned_units = kept->planned;
  product->target_cents = kept->target;
  return stead_product_repo_save (store, product, error);
}

static void
show_error (SteadPriceForm *self,
            const GError   *error)
{
  gtk_label_set_text (GTK_LABEL (self->error), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->error, error != NULL);
}

static Kept
read_kept (SteadPriceForm *self)
{
  return (Kept) {
    .product_id = stead_price_model_get_answer (self->model)->cost->product->id,
    .cents = stead_price_model_get (self->model, STEAD_KNOB_PRICE),
    .planned = stead_price_model_get (self->model, STEAD_KNOB_PLANNED),
    .target = stead_price_model_get (self->model, STEAD_KNOB_TARGET),
  };
}

static void
use_cb (SteadPriceForm *self)
{
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);
  g_autoptr(GError) error = NULL;
  g_autofree char *name = NULL, *price = NULL, *note = NULL;
  Kept kept;

  if (answer == NULL || !gtk_widget_get_sensitive (self->use))
    return;
  kept = read_kept (self);
  note = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->note))));
  kept.note = *note != '\0' ? note : NULL;
  price = stead_money_format (kept.cents, answer->cost->farm->currency);
  /* Translators: a step in the menu: the product, then its price and unit: "Eggs at $4.75 a dozen". */
  name = g_strdup_printf (_("%s at %s %s"), answer->cost->product->name, price,
                          stead_words_per_unit (answer->cost->product->pack));
  if (stead_desk_act (self->desk, name, set_price, &kept, &error))
    gtk_editable_set_text (GTK_EDITABLE (self->note), "");
  show_error (self, error);
}

static void
keep_plan_cb (SteadPriceForm *self)
{
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);
  g_autoptr(GError) error = NULL;
  g_autofree char *name = NULL, *units = NULL;
  Kept kept;

  if (answer == NULL)
    return;
  kept = read_kept (self);
  units = stead_words_units (answer->cost->product->pack, (double) kept.planned);
  /* Translators: a step in the menu: the product and the units planned: "Plan of Eggs: 72 dozen". */
  name = g_strdup_printf (_("Plan of %s: %s"), answer->cost->product->name, units);
  show_error (self, stead_desk_act (self->desk, name, save_plan, &kept, &error) ? NULL : error);
}

static void
reset_cb (SteadPriceForm *self)
{
  stead_price_model_reset (self->model);
  show_error (self, NULL);
}

/* Following the model ---------------------------------------------------------------- */

static void
show_use (SteadPriceForm         *self,
          const SteadPriceAnswer *answer)
{
  gint64 cents = stead_price_model_get (self->model, STEAD_KNOB_PRICE);
  g_autofree char *price = stead_money_format (cents, answer->cost->farm->currency);
  /* Translators: a button; %s is a price. */
  g_autofree char *text = g_strdup_printf (_("Use %s from today"), price);

  gtk_button_set_label (GTK_BUTTON (self->use), text);
  gtk_widget_set_sensitive (self->use, cents != answer->price_on_file);
}

static void
changed_cb (SteadPriceForm *self)
{
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);

  gtk_widget_set_sensitive (self->reset, stead_price_model_is_any_turned (self->model));
  gtk_widget_set_sensitive (self->keep_plan, stead_price_model_is_turned (self->model, STEAD_KNOB_PLANNED)
                                             || stead_price_model_is_turned (self->model, STEAD_KNOB_TARGET));
  if (answer == NULL)
    return;
  show_use (self, answer);
  gtk_label_set_markup (GTK_LABEL (self->advice), answer->advice != NULL ? answer->advice : "");
  gtk_widget_set_visible (self->advice, answer->advice != NULL);
}

/* Widget --------------------------------------------------------------------------------- */

static void
stead_price_form_dispose (GObject *object)
{
  SteadPriceForm *self = STEAD_PRICE_FORM (object);

  if (self->model != NULL)
    g_signal_handlers_disconnect_by_data (self->model, self);
  g_clear_object (&self->model);
  g_clear_object (&self->desk);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PRICE_FORM);
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_price_form_parent_class)->dispose (object);
}

static void
stead_price_form_class_init (SteadPriceFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_price_form_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("price/stead-price-form.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, price_rows);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, plan_rows);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, cost_rows);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, reset);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, keep_plan);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, note);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, use);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, error);
  gtk_widget_class_bind_template_child (widget_class, SteadPriceForm, advice);
  gtk_widget_class_bind_template_callback (widget_class, use_cb);
  gtk_widget_class_bind_template_callback (widget_class, keep_plan_cb);
  gtk_widget_class_bind_template_callback (widget_class, reset_cb);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
stead_price_form_init (SteadPriceForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
stead_price_form_new (SteadDesk       *desk,
                      SteadPriceModel *model)
{
  SteadPriceForm *self;

  g_return_val_if_fail (STEAD_IS_DESK (desk) && STEAD_IS_PRICE_MODEL (model), NULL);

  self = g_object_new (STEAD_TYPE_PRICE_FORM, NULL);
  self->desk = g_object_ref (desk);
  self->model = g_object_ref (model);
  gtk_box_append (self->price_rows, stead_knob_row_new (model, STEAD_KNOB_PRICE));
  gtk_box_append (self->plan_rows, stead_knob_row_new (model, STEAD_KNOB_PLANNED));
  gtk_box_append (self->plan_rows, stead_knob_row_new (model, STEAD_KNOB_TARGET));
  gtk_box_append (self->cost_rows, stead_knob_row_new (model, STEAD_KNOB_UNIT_COST));
  gtk_box_append (self->cost_rows, stead_knob_row_new (model, STEAD_KNOB_FIXED));
  g_signal_connect_swapped (model, "changed", G_CALLBACK (changed_cb), self);
  changed_cb (self);
  return GTK_WIDGET (self);
}
