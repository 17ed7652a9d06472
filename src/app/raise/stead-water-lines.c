/* stead-water-lines.c - a water test line by line. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-water-lines.h"

#include "app/stead-ui.h"

struct _SteadWaterLines
{
  GtkWidget  parent_instance;
  GtkWidget *box;
};

G_DEFINE_FINAL_TYPE (SteadWaterLines, stead_water_lines, GTK_TYPE_WIDGET)

static void
stead_water_lines_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_water_lines_parent_class)->dispose (object);
}

static void
stead_water_lines_class_init (SteadWaterLinesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_water_lines_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_water_lines_init (SteadWaterLines *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

static GtkWidget *
add_text (GtkWidget  *box,
          const char *text,
          const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static gboolean
warns (const SteadWaterLine *line)
{
  return line->judgement.verdict == STEAD_WATER_WATCH || line->judgement.verdict == STEAD_WATER_ACT;
}

/* "pH  8.9   act" */
static void
add_head (GtkWidget            *box,
          const SteadWaterLine *line,
          SteadUnitSystem       units)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *value = stead_water_value_text (line->measure, line->value, units);
  GtkWidget *verdict;

  gtk_widget_add_css_class (add_text (head, stead_water_measure_name (line->measure), NULL), "strong");
  gtk_widget_add_css_class (add_text (head, value, "figure"), "strong");
  verdict = add_text (head, stead_water_verdict_word (line), warns (line) ? "warn" : "soft");
  gtk_widget_set_hexpand (verdict, TRUE);
  gtk_label_set_xalign (GTK_LABEL (verdict), 1);
  gtk_box_append (GTK_BOX (box), head);
}

static void
add_line (SteadWaterLines        *self,
          const SteadWaterAnswer *answer,
          const SteadWaterLine   *line)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  g_autofree char *sentence = stead_water_line_sentence (line, answer->farm->units);
  g_autofree char *trend = stead_water_answer_trend_sentence (answer, line->measure);
  const char *steps = warns (line) ? stead_water_action_steps (line->judgement.action) : NULL;

  add_head (box, line, answer->farm->units);
  add_text (box, sentence, NULL);
  if (steps != NULL)
    add_text (box, steps, "caution");
  if (trend != NULL)
    add_text (box, trend, "soft");
  gtk_box_append (GTK_BOX (self->box), box);
}

/* The worst first, then what was read, then what was not. */
void
stead_water_lines_show (SteadWaterLines        *self,
                        const SteadWaterAnswer *answer)
{
  g_autoptr(GPtrArray) worst = NULL;
  GtkWidget *child;

  g_return_if_fail (STEAD_IS_WATER_LINES (self) && answer != NULL);

  while ((child = gtk_widget_get_first_child (self->box)) != NULL)
    gtk_box_remove (GTK_BOX (self->box), child);
  if (answer->last == NULL)
    {
      add_text (self->box, _("A test appears here line by line: record one at the left."), "soft");
      return;
    }
  worst = stead_water_answer_worst (answer);
  for (guint i = 0; i < worst->len; i++)
    add_line (self, answer, worst->pdata[i]);
  for (int missing = 0; missing <= 1; missing++)
    for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
      if (!warns (&answer->lines[i]) && (isnan (answer->lines[i].value) != 0) == missing)
        add_line (self, answer, &answer->lines[i]);
}
