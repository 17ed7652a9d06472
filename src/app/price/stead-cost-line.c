/* stead-cost-line.c - one line of the cost sheet as a disclosure.
 *
 * The entries behind it are read from the farm when the line is opened, and
 * again when facts have changed while it is open; a closed line reads nothing.
 */
#include "config.h"

#include "app/price/stead-cost-line.h"

#include <glib/gi18n-lib.h>

#include "app/price/stead-entry-list.h"
#include "app/stead-chart-style.h"
#include "app/stead-ui.h"
#include "app/stead-why-text.h"
#include "core/stead-money.h"
#include "draw/stead-cost-bar.h"

#define KEY_SIZE 14

struct _SteadCostLine
{
  GtkWidget              parent_instance;

  SteadDesk             *desk;
  SteadCostKind          kind;
  const SteadCostAnswer *answer;     /* (nullable), not owned */

  GtkWidget             *expander;
  GtkWidget             *key;
  GtkWidget             *label;
  GtkWidget             *amount;
  GtkWidget             *entries;
  GtkWidget             *message;    /* why there are no entries */
  GtkWidget             *why;
};

G_DEFINE_FINAL_TYPE (SteadCostLine, stead_cost_line, GTK_TYPE_WIDGET)

static void
draw_key_cb (GtkDrawingArea *area,
             cairo_t        *cr,
             int             width,
             int             height,
             gpointer        data)
{
  SteadCostLine *self = data;
  SteadDrawStyle style;

  stead_chart_style (GTK_WIDGET (area), "USD", &style);
  stead_cost_key_paint (cr, &style, self->kind, MIN (width, height));
}

static void
show_message (SteadCostLine *self,
              const char    *text)
{
  gtk_label_set_text (GTK_LABEL (self->message), text);
  gtk_widget_set_visible (self->message, *text != '\0');
}

static void
read_entries (SteadCostLine *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(GError) error = NULL;
  GPtrArray *entries;
  guint n;

  if (self->answer == NULL || store == NULL || !gtk_expander_get_expanded (GTK_EXPANDER (self->expander)))
    return;
  entries = stead_cost_answer_entries (store, self->answer, self->kind, &error);
  show_message (self, error != NULL ? error->message : "");
  gtk_widget_set_visible (self->entries, entries != NULL);
  if (entries == NULL)
    return;
  n = entries->len;
  gtk_widget_set_visible (self->entries, n > 0);
  stead_entry_list_set (STEAD_ENTRY_LIST (self->entries), entries, self->answer->farm->currency);
}

static void
stead_cost_line_dispose (GObject *object)
{
  SteadCostLine *self = STEAD_COST_LINE (object);

  self->answer = NULL;
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_cost_line_parent_class)->dispose (object);
}

/* GTK 4.8 does not let the Tab key out of a list that stands in an expander. */
static gboolean
stead_cost_line_focus (GtkWidget        *widget,
                       GtkDirectionType  direction)
{
  SteadCostLine *self = STEAD_COST_LINE (widget);
  gboolean inside = gtk_widget_get_focus_child (self->entries) != NULL;

  if (inside && direction == GTK_DIR_TAB_FORWARD)
    return FALSE;
  if (inside && direction == GTK_DIR_TAB_BACKWARD)
    return gtk_widget_grab_focus (self->expander);
  return gtk_widget_child_focus (self->expander, direction);
}

static void
stead_cost_line_class_init (SteadCostLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_cost_line_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  widget_class->focus = stead_cost_line_focus;
  gtk_widget_class_set_css_name (widget_class, "costline");
}

/* Key, name and amount in one row. */
static GtkWidget *
make_head (SteadCostLine *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->key = gtk_drawing_area_new ();
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self->key), KEY_SIZE);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->key), KEY_SIZE);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->key), draw_key_cb, self, NULL);
  gtk_widget_set_valign (self->key, GTK_ALIGN_CENTER);
  self->label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->label), 22);
  gtk_widget_set_hexpand (self->label, TRUE);
  self->amount = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->amount), 1);
  gtk_widget_add_css_class (self->amount, "figure");
  gtk_box_append (GTK_BOX (head), self->key);
  gtk_box_append (GTK_BOX (head), self->label);
  gtk_box_append (GTK_BOX (head), self->amount);
  gtk_widget_set_hexpand (head, TRUE);
  return head;
}

static void
stead_cost_line_init (SteadCostLine *self)
{
  self->expander = gtk_expander_new (NULL);
  gtk_expander_set_label_widget (GTK_EXPANDER (self->expander), make_head (self));
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
  g_signal_connect_swapped (self->expander, "notify::expanded", G_CALLBACK (read_entries), self);
}

GtkWidget *
stead_cost_line_new (SteadDesk     *desk,
                     SteadCostKind  kind)
{
  SteadCostLine *self;
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  g_return_val_if_fail (STEAD_IS_DESK (desk), NULL);

  self = g_object_new (STEAD_TYPE_COST_LINE, NULL);
  self->desk = g_object_ref (desk);
  self->kind = kind;
  self->entries = stead_entry_list_new (desk, _("Entries behind this line"));
  self->message = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->message), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->message), 0);
  gtk_widget_add_css_class (self->message, "warn");
  gtk_widget_set_visible (self->message, FALSE);
  self->why = stead_why_text_new ();
  gtk_widget_add_css_class (body, "behind");
  gtk_box_append (GTK_BOX (body), self->entries);
  gtk_box_append (GTK_BOX (body), self->message);
  gtk_box_append (GTK_BOX (body), self->why);
  stead_ui_expander_set_child (self->expander, body);
  return GTK_WIDGET (self);
}

void
stead_cost_line_set (SteadCostLine         *self,
                     const SteadCostAnswer *answer)
{
  g_autofree char *amount = NULL, *said = NULL;
  const SteadCostPart *part;

  g_return_if_fail (STEAD_IS_COST_LINE (self));

  self->answer = answer;
  part = answer != NULL ? &answer->sheet.parts[self->kind] : NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), part != NULL && part->total_cents > 0);
  if (part == NULL)
    return;
  amount = stead_money_format (part->shown_cents, answer->farm->currency);
  /* Translators: a line of the cost sheet and its amount: "Feed, $1.46". */
  said = g_strdup_printf (C_("line of the cost sheet", "%s, %s"), answer->labels[self->kind], amount);
  gtk_label_set_text (GTK_LABEL (self->label), answer->labels[self->kind]);
  gtk_label_set_text (GTK_LABEL (self->amount), amount);
  stead_ui_name (self->expander, said);
  stead_why_text_set (STEAD_WHY_TEXT (self->why), answer->whys[self->kind]);
  read_entries (self);
}
