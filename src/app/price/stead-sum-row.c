/* stead-sum-row.c - a sum under the cost sheet, with the way it is worked out. */
#include "config.h"

#include "app/price/stead-sum-row.h"

#include <glib/gi18n-lib.h>

#include "app/stead-ui.h"
#include "app/stead-why-text.h"
#include "core/stead-money.h"

struct _SteadSumRow
{
  GtkWidget  parent_instance;

  GtkWidget *expander;
  GtkWidget *name;
  GtkWidget *amount;
  GtkWidget *why;
};

G_DEFINE_FINAL_TYPE (SteadSumRow, stead_sum_row, GTK_TYPE_WIDGET)

static void
stead_sum_row_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_sum_row_parent_class)->dispose (object);
}

static void
stead_sum_row_class_init (SteadSumRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_sum_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sumrow");
}

static void
stead_sum_row_init (SteadSumRow *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->name = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->name), 0);
  gtk_label_set_wrap (GTK_LABEL (self->name), TRUE);
  gtk_widget_set_hexpand (self->name, TRUE);
  self->amount = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->amount), 1);
  gtk_widget_add_css_class (self->amount, "figure");
  gtk_box_append (GTK_BOX (head), self->name);
  gtk_box_append (GTK_BOX (head), self->amount);
  gtk_widget_set_hexpand (head, TRUE);
  self->why = stead_why_text_new ();
  self->expander = gtk_expander_new (NULL);
  gtk_expander_set_label_widget (GTK_EXPANDER (self->expander), head);
  stead_ui_expander_set_child (self->expander, self->why);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
}

GtkWidget *
stead_sum_row_new (gboolean total)
{
  GtkWidget *self = g_object_new (STEAD_TYPE_SUM_ROW, NULL);

  gtk_widget_add_css_class (self, total ? "sum" : "soft");
  return self;
}

void
stead_sum_row_set (SteadSumRow    *self,
                   const char     *name,
                   gint64          cents,
                   const char     *currency,
                   const SteadWhy *why)
{
  g_autofree char *amount = NULL, *said = NULL;

  g_return_if_fail (STEAD_IS_SUM_ROW (self) && name != NULL && currency != NULL);

  amount = stead_money_format (cents, currency);
  /* Translators: a line of the cost sheet and its amount: "Feed, $1.46". */
  said = g_strdup_printf (C_("line of the cost sheet", "%s, %s"), name, amount);
  gtk_label_set_text (GTK_LABEL (self->name), name);
  gtk_label_set_text (GTK_LABEL (self->amount), amount);
  stead_ui_name (self->expander, said);
  stead_why_text_set (STEAD_WHY_TEXT (self->why), why);
}
