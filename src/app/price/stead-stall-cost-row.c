/* stead-stall-cost-row.c - one cost of a sale day in the product dialog. */
#include "config.h"

#include "app/price/stead-stall-cost-row.h"

#include <glib/gi18n-lib.h>

#include "app/stead-field.h"
#include "app/stead-focus.h"
#include "app/stead-ui.h"

struct _SteadStallCostRow
{
  GtkWidget   parent_instance;

  gint64      id;        /* on file; 0: not yet */
  SteadField *name, *cents, *per_units;
};

enum { REMOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadStallCostRow, stead_stall_cost_row, GTK_TYPE_WIDGET)

static void
remove_cb (SteadStallCostRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

static gboolean
stead_stall_cost_row_grab_focus (GtkWidget *widget)
{
  return stead_focus_part (widget, GTK_WIDGET (STEAD_STALL_COST_ROW (widget)->name));
}

static void
stead_stall_cost_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_STALL_COST_ROW);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_stall_cost_row_parent_class)->dispose (object);
}

static void
stead_stall_cost_row_class_init (SteadStallCostRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_stall_cost_row_dispose;
  widget_class->grab_focus = stead_stall_cost_row_grab_focus;
  signals[REMOVED] = g_signal_new ("removed", STEAD_TYPE_STALL_COST_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("price/stead-stall-cost.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadStallCostRow, name);
  gtk_widget_class_bind_template_child (widget_class, SteadStallCostRow, cents);
  gtk_widget_class_bind_template_child (widget_class, SteadStallCostRow, per_units);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
stead_stall_cost_row_init (SteadStallCostRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
stead_stall_cost_row_new (const char *currency)
{
  SteadStallCostRow *self = g_object_new (STEAD_TYPE_STALL_COST_ROW, NULL);

  stead_field_set_currency (self->cents, currency);
  return GTK_WIDGET (self);
}

void
stead_stall_cost_row_show (SteadStallCostRow    *self,
                           const SteadStallCost *cost)
{
  g_return_if_fail (STEAD_IS_STALL_COST_ROW (self) && cost != NULL);

  self->id = cost->id;
  stead_field_set_text (self->name, cost->name);
  stead_field_show_money (self->cents, cost->cents);
  if (cost->per_units > 0)
    stead_field_show_count (self->per_units, cost->per_units);
}

SteadStallCost *
stead_stall_cost_row_read (SteadStallCostRow *self)
{
  SteadStallCost *cost;
  const char *name = NULL;
  gint64 cents = 0, per_units = 0;
  gboolean good;

  g_return_val_if_fail (STEAD_IS_STALL_COST_ROW (self), NULL);

  good = stead_field_read_text (self->name, &name);
  good &= stead_field_read_money (self->cents, 0, &cents);
  good &= stead_field_read_count (self->per_units, 0, &per_units);
  if (!good)
    return NULL;
  if (cents < 0)
    {
      stead_field_set_error (self->cents, _("Enter a cost of 0 or more."));
      return NULL;
    }
  cost = g_new0 (SteadStallCost, 1);
  cost->id = self->id;
  cost->name = g_strstrip (g_strdup (name));
  cost->cents = cents;
  cost->per_units = per_units;
  return cost;
}

void
stead_stall_cost_row_complain (SteadStallCostRow *self,
                               const char        *message)
{
  g_return_if_fail (STEAD_IS_STALL_COST_ROW (self));

  stead_field_set_error (self->per_units, message);
}
