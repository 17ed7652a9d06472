/* stead-plan-dialog.c - what is meant with a batch, to hold the log against.
 *
 * Prices are typed for a dozen, a pound or a kilogram, as the farm speaks of them, and
 * kept for an egg or a kilogram.  What is left empty is not planned.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-plan-dialog.h"

#include "answer/stead-batch-answer.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

#define RESOURCE STEAD_UI ("raise/stead-plan-dialog.ui")

struct _SteadPlanDialog
{
  SteadDialog        parent_instance;

  SteadBatchAnswer  *answer;
  SteadBatchPlan     plan;
  const SteadUnit   *mass;     /* of feed */

  SteadField        *output, *price, *feed, *feed_price, *other, *care, *lost, *ends;
  GtkLabel          *about, *hint;
};

G_DEFINE_FINAL_TYPE (SteadPlanDialog, stead_plan_dialog, STEAD_TYPE_DIALOG)

/* --- reading ----------------------------------------------------------------------- */

/* Money typed for so many base units, as cents for one. */
static gboolean
read_price (SteadField *field,
            double      base,
            double     *out)
{
  gint64 cents = -1;

  if (!stead_field_read_money (field, -1, &cents))
    return FALSE;
  *out = cents < 0 ? NAN : (double) cents / base;
  return TRUE;
}

static gboolean
read_plan (SteadPlanDialog *self,
           SteadBatchPlan  *plan)
{
  double feed_base = stead_quantity_to_base (1, self->mass);
  gboolean weighed = self->answer->pack != STEAD_PACK_DOZEN && self->answer->pack != STEAD_PACK_PIECE;
  gboolean good = weighed ? stead_field_read_quantity (self->output, NAN, &plan->output_base)
                          : stead_field_read_number (self->output, NAN, &plan->output_base);

  good &= read_price (self->price, self->answer->pack_base, &plan->price_cents);
  good &= stead_field_read_quantity (self->feed, NAN, &plan->feed_kg);
  good &= read_price (self->feed_price, feed_base, &plan->feed_cents_kg);
  good &= read_price (self->other, 1, &plan->other_cents);
  good &= stead_field_read_number (self->care, NAN, &plan->care_minutes_day);
  good &= stead_field_read_number (self->lost, NAN, &plan->lost_frac);
  good &= stead_field_read_day (self->ends, STEAD_DAY_NONE, &plan->ends_on);
  if (!good)
    return FALSE;
  if (!isnan (plan->lost_frac) && !(plan->lost_frac >= 0 && plan->lost_frac <= 1))
    {
      stead_field_set_error (self->lost, _("Enter a share of 0 to 100 %."));
      return FALSE;
    }
  if (plan->ends_on != STEAD_DAY_NONE && plan->ends_on < self->answer->money.from)
    {
      stead_field_set_error (self->ends, _("The plan cannot end before the batch began."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadPlanDialog *self = data;

  return stead_batch_repo_set_plan (store, self->answer->money.batch->id, &self->plan, error);
}

static gboolean
stead_plan_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadPlanDialog *self = STEAD_PLAN_DIALOG (dialog);
  g_autofree char *step = NULL;

  if (!read_plan (self, &self->plan))
    return FALSE;
  /* Translators: name of a step to undo; the name of a batch. */
  step = g_strdup_printf (_("plan of “%s”"), self->answer->money.batch->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, self, error);
}

/* --- showing -------------------------------------------------------------------------- */

static void
show_price (SteadField *field,
            double      cents,
            double      base)
{
  if (!isnan (cents))
    stead_field_show_money (field, stead_money_round (cents * base));
}

static const char *
output_label (const SteadBatchAnswer *answer)
{
  switch (answer->pack)
    {
    case STEAD_PACK_DOZEN: return _("Good eggs in all");
    case STEAD_PACK_PIECE: return _("Pieces in all");
    case STEAD_PACK_HALF_DOZEN:
    case STEAD_PACK_TRAY:
    case STEAD_PACK_POUND:
    case STEAD_PACK_KILOGRAM:
    case STEAD_PACK_JAR:
    case STEAD_PACK_PACK:
    default: return _("Harvest in all");
    }
}

static void
show_labels (SteadPlanDialog *self)
{
  const SteadBatchAnswer *answer = self->answer;
  gboolean weighed = answer->pack != STEAD_PACK_DOZEN && answer->pack != STEAD_PACK_PIECE;
  /* Translators: "Price, a pound" */
  g_autofree char *price = g_strdup_printf (_("Price, %s"), stead_words_per_unit (answer->pack));
  g_autofree char *feed_price = g_strdup_printf (_("Price of feed, for 1 %s"), stead_unit_symbol (self->mass));
  g_autofree char *about = g_strdup_printf (_("What is meant with “%s”, from its first day to its last. "
                                              "What you leave empty is not planned."), answer->money.batch->name);

  g_object_set (self->output, "label", output_label (answer), "kind",
                weighed ? STEAD_FIELD_QUANTITY : STEAD_FIELD_NUMBER, NULL);
  if (weighed)
    stead_field_set_unit (self->output, self->mass);
  g_object_set (self->price, "label", price, NULL);
  g_object_set (self->feed_price, "label", feed_price, NULL);
  stead_field_set_unit (self->feed, self->mass);
  gtk_label_set_text (self->about, about);
  gtk_label_set_text (self->hint, answer->money.batch->kind == STEAD_BATCH_FLOCK
                      ? _("All other costs: litter, supplies and the share of the coop; not the birds and not the feed.")
                      : _("All other costs: supplies, power and the share of equipment; not the animals, not seed or "
                          "plants, and not the feed."));
}

static void
show_plan (SteadPlanDialog *self)
{
  const SteadBatchPlan *plan = &self->plan;

  if (!isnan (plan->output_base) && (self->answer->pack == STEAD_PACK_DOZEN || self->answer->pack == STEAD_PACK_PIECE))
    stead_field_show_number (self->output, plan->output_base);
  else if (!isnan (plan->output_base))
    stead_field_show_quantity (self->output, plan->output_base);
  show_price (self->price, plan->price_cents, self->answer->pack_base);
  if (!isnan (plan->feed_kg))
    stead_field_show_quantity (self->feed, plan->feed_kg);
  show_price (self->feed_price, plan->feed_cents_kg, stead_quantity_to_base (1, self->mass));
  show_price (self->other, plan->other_cents, 1);
  if (!isnan (plan->care_minutes_day))
    stead_field_show_number (self->care, plan->care_minutes_day);
  if (!isnan (plan->lost_frac))
    stead_field_show_number (self->lost, plan->lost_frac);
  if (plan->ends_on != STEAD_DAY_NONE)
    stead_field_show_day (self->ends, plan->ends_on);
}

static void
stead_plan_dialog_dispose (GObject *object)
{
  SteadPlanDialog *self = STEAD_PLAN_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PLAN_DIALOG);
  g_clear_pointer (&self->answer, stead_batch_answer_free);
  G_OBJECT_CLASS (stead_plan_dialog_parent_class)->dispose (object);
}

static void
stead_plan_dialog_class_init (SteadPlanDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_plan_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_plan_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, output);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, price);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, feed);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, feed_price);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, other);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, care);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, lost);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, ends);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, about);
  gtk_widget_class_bind_template_child (widget_class, SteadPlanDialog, hint);
}

static void
stead_plan_dialog_init (SteadPlanDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_plan_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     batch_id)
{
  SteadStore *store;
  g_autoptr(SteadBatchAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  SteadPlanDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));
  store = stead_desk_get_store (desk);
  g_return_if_fail (store != NULL);
  answer = stead_batch_answer_new (store, batch_id, &error);
  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_PLAN_DIALOG, "title", _("Plan of the batch"), NULL);
  self->plan = answer->money.plan;
  self->mass = stead_unit_default (STEAD_DIMENSION_MASS, answer->farm->units);
  stead_field_set_currency (self->price, answer->farm->currency);
  stead_field_set_currency (self->feed_price, answer->farm->currency);
  stead_field_set_currency (self->other, answer->farm->currency);
  self->answer = g_steal_pointer (&answer);
  stead_field_set_today (self->ends, stead_store_get_today (store));
  show_labels (self);
  show_plan (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->output));
}
