/* stead-count-row.c - one lot in the count of the store room. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-count-row.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"

/* Less than this is no difference that a scale or a person can tell, in base units. */
#define SAME_BASE 1e-6

struct _SteadCountRow
{
  GtkWidget        parent_instance;

  gint64           lot_id;
  double           expected_base;
  const SteadUnit *unit;

  SteadField      *counted, *reason;
  GtkLabel        *verdict;
};

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadCountRow, stead_count_row, GTK_TYPE_WIDGET)

gint64
stead_count_row_get_lot (SteadCountRow *self)
{
  g_return_val_if_fail (STEAD_IS_COUNT_ROW (self), 0);
  return self->lot_id;
}

static gboolean
peek_base (SteadCountRow *self,
           double        *out)
{
  return !stead_field_is_empty (self->counted) &&
         stead_quantity_parse (stead_field_get_text (self->counted), self->unit->dimension, self->unit, out, NULL, NULL);
}

gboolean
stead_count_row_peek (SteadCountRow *self,
                      double        *out_base,
                      gboolean      *out_differs)
{
  double base = 0;
  gboolean typed;

  g_return_val_if_fail (STEAD_IS_COUNT_ROW (self), FALSE);

  typed = peek_base (self, &base);
  *out_base = typed ? base : (double) NAN;
  *out_differs = typed && fabs (base - self->expected_base) > SAME_BASE;
  return typed;
}

static void
counted_cb (SteadCountRow *self)
{
  g_autofree char *expected = stead_quantity_format (self->expected_base, self->unit);
  g_autofree char *off = NULL, *text = NULL;
  double base = 0;
  gboolean differs;

  if (!stead_count_row_peek (self, &base, &differs))
    text = g_strdup ("");
  else if (!differs)
    text = g_strdup (_("as on record"));
  else
    {
      off = stead_quantity_format (fabs (base - self->expected_base), self->unit);
      /* Translators: amounts: "130 should be there: 2 are missing". */
      text = g_strdup_printf (base < self->expected_base ? _("%s on record: %s missing") : _("%s on record: %s more"),
                              expected, off);
    }
  gtk_label_set_text (self->verdict, text);
  gtk_widget_set_visible (GTK_WIDGET (self->reason), differs);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
stead_count_row_read (SteadCountRow   *self,
                      SteadCountLine  *line)
{
  gboolean differs;
  double base;

  g_return_val_if_fail (STEAD_IS_COUNT_ROW (self) && line != NULL, FALSE);

  if (!stead_field_read_quantity (self->counted, NAN, &line->counted_base))
    return FALSE;
  if (line->counted_base < 0)
    {
      stead_field_set_error (self->counted, _("Enter 0 or more."));
      return FALSE;
    }
  g_clear_pointer (&line->reason, g_free);
  if (!stead_count_row_peek (self, &base, &differs) || !differs)
    return TRUE;
  if (stead_field_is_empty (self->reason))
    {
      stead_field_set_error (self->reason, _("Write why it differs, or that nobody knows."));
      gtk_widget_child_focus (GTK_WIDGET (self->reason), GTK_DIR_TAB_FORWARD);
      return FALSE;
    }
  line->reason = g_strdup (stead_field_get_text (self->reason));
  return TRUE;
}

void
stead_count_row_take (SteadCountRow *self,
                      SteadCountRow *other)
{
  g_return_if_fail (STEAD_IS_COUNT_ROW (self) && STEAD_IS_COUNT_ROW (other));

  stead_field_set_text (self->counted, stead_field_get_text (other->counted));
  stead_field_set_text (self->reason, stead_field_get_text (other->reason));
  counted_cb (self);
}

static void
stead_count_row_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_count_row_parent_class)->dispose (object);
}

static void
stead_count_row_class_init (SteadCountRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_count_row_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  signals[CHANGED] = g_signal_new ("changed", STEAD_TYPE_COUNT_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
stead_count_row_init (SteadCountRow *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))),
                                  GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 3);
}

/* "Eggs · lot H26302-2 · Teaching kitchen" */
static GtkWidget *
name_label (const SteadCountLine *line)
{
  g_autofree char *text = line->place_name != NULL
                          /* Translators: a thing, its lot code, where it lies. */
                          ? g_strdup_printf (_("%s, lot %s, %s"), line->item_name, line->lot_code, line->place_name)
                          : g_strdup_printf (_("%s, lot %s"), line->item_name, line->lot_code);
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  stead_ui_wrap (GTK_LABEL (label));
  return label;
}

GtkWidget *
stead_count_row_new (const SteadCountLine *line)
{
  SteadCountRow *self = g_object_new (STEAD_TYPE_COUNT_ROW, NULL);
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  /* Translators: beside a field for how much is there; a lot code. */
  g_autofree char *counted = g_strdup_printf (_("Counted of %s"), line->lot_code);
  /* Translators: beside a field for a reason; a lot code. */
  g_autofree char *reason = g_strdup_printf (_("Why %s differs"), line->lot_code);

  self->lot_id = line->lot_id;
  self->expected_base = line->expected_base;
  self->unit = line->unit;
  self->counted = STEAD_FIELD (stead_field_new (counted, STEAD_FIELD_QUANTITY));
  self->reason = STEAD_FIELD (stead_field_new (reason, STEAD_FIELD_TEXT));
  self->verdict = GTK_LABEL (gtk_label_new (NULL));
  stead_field_set_unit (self->counted, line->unit);
  gtk_widget_set_size_request (GTK_WIDGET (self->counted), 220, -1);   /* all in one line, one under the other */
  g_object_set (self->reason, "hint", _("spilled, not written down, or that nobody knows"), NULL);
  gtk_widget_add_css_class (GTK_WIDGET (self->verdict), "soft");
  gtk_label_set_xalign (self->verdict, 0);
  stead_ui_wrap (self->verdict);
  gtk_widget_set_visible (GTK_WIDGET (self->reason), FALSE);
  g_signal_connect_swapped (self->counted, "changed", G_CALLBACK (counted_cb), self);
  gtk_box_append (GTK_BOX (words), name_label (line));
  gtk_box_append (GTK_BOX (words), GTK_WIDGET (self->verdict));
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (top), words);
  gtk_box_append (GTK_BOX (top), GTK_WIDGET (self->counted));
  gtk_widget_set_parent (top, GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->reason), GTK_WIDGET (self));
  return GTK_WIDGET (self);
}
