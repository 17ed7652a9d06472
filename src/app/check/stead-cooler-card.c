/* stead-cooler-card.c - one place that is to be cold: its air over time, its limit, the next reading. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-cooler-card.h"

#include "app/check/stead-cooler-entry.h"
#include "app/check/stead-settle-box.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-chart-area.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "draw/stead-trend-chart.h"

#define CHART_HEIGHT 200

/* As many of the last readings can be corrected; a logger reads every few minutes. */
#define MOST_ROWS 24

struct _SteadCoolerCard
{
  GtkWidget            parent_instance;

  SteadDesk           *desk;
  SteadPersonPick     *person;    /* who reads; of the whole pane */
  gint64               place_id;
  char                *name;
  SteadPlaceAirAnswer *air;       /* (nullable): as last shown */
  SteadTrendLayout     layout;

  GtkLabel            *sentence, *source;
  SteadChartArea      *chart;
  SteadCoolerEntry    *entry;
  GtkWidget           *open, *past;   /* spells that nothing was done about, and those that were seen to */
  SteadWhyBox         *whys;
  GtkWidget           *history, *rows;   /* what was read, with what was corrected */
};

G_DEFINE_FINAL_TYPE (SteadCoolerCard, stead_cooler_card, GTK_TYPE_WIDGET)

/* --- the chart -------------------------------------------------------------------------- */

static gboolean
is_drawn (SteadCoolerCard *self)
{
  return self->air != NULL && self->air->points->len > 0;
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadCoolerCard *self = data;
  SteadTrendLayout layout;
  SteadTrendWords words;

  if (!is_drawn (self))
    return;
  words = (SteadTrendWords) { .unit = self->air->unit, .today = _("today"), .most = self->air->most,
                              .ahead = _("if it goes on so") };
  stead_trend_chart_layout (cr, &self->air->series, &words, style, width, height, &layout);
  stead_trend_chart_paint (cr, &self->air->series, &words, style, &layout, -1);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (self->chart)))
    self->layout = layout;
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadCoolerCard *self = data;
  int nearest = is_drawn (self) ? stead_trend_chart_nearest (&self->layout, &self->air->series, x) : -1;

  return nearest >= 0 ? stead_place_air_point_text (self->air, (gsize) nearest) : NULL;
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadCoolerCard *self = data;

  if (!is_drawn (self) || index < 0 || (guint) index >= self->air->points->len)
    return NULL;
  stead_trend_chart_point (&self->layout, &self->air->series.points[index], x, y);
  return stead_place_air_point_text (self->air, (gsize) index);
}

/* --- what was too warm ------------------------------------------------------------------ */

static gboolean
done_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_done_repo_add (store, data, error);
}

static void
settled_cb (SteadCoolerCard *self,
            int              way,
            SteadSettleBox  *box)
{
  g_autofree char *text = g_strdup (stead_settle_box_get_text (box));
  SteadDone done = { .reading_id = stead_settle_box_get_id (box), .text = text,
                     .at = stead_time_now (stead_desk_get_store (self->desk)),
                     .person_id = stead_person_pick_get (self->person) };
  /* Translators: a step that can be undone; the name of a cooler follows. */
  g_autofree char *step = g_strdup_printf (_("what was done about “%s”"), self->name);
  g_autoptr(GError) error = NULL;

  if (*g_strstrip (text) == '\0')
    stead_settle_box_complain (box, _("Write down what was done."));
  else if (!stead_desk_act (self->desk, step, done_act, &done, &error))
    stead_settle_box_complain (box, error->message);
}

/* (nullable): the box of a spell, that stays as long as the spell is open. */
static GtkWidget *
box_of (SteadCoolerCard *self,
        gint64           id)
{
  GtkWidget *box = gtk_widget_get_first_child (self->open);

  while (box != NULL && stead_settle_box_get_id (STEAD_SETTLE_BOX (box)) != id)
    box = gtk_widget_get_next_sibling (box);
  return box;
}

static void
show_open (SteadCoolerCard      *self,
           const SteadWarmSpell *spell)
{
  GtkWidget *box = box_of (self, spell->last->id);

  if (box == NULL)
    {
      /* Translators: the name of a cooler. */
      g_autofree char *label = g_strdup_printf (_("What was done about %s"), self->name);
      g_autofree char *name = g_strdup_printf (_("Save what was done about %s"), self->name);

      box = stead_settle_box_new (spell->last->id);
      stead_settle_box_ask (STEAD_SETTLE_BOX (box), label);
      stead_settle_box_add (STEAD_SETTLE_BOX (box), _("Save what was done"), name);
      g_signal_connect_object (box, "settled", G_CALLBACK (settled_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (self->open), box);
    }
  stead_settle_box_say (STEAD_SETTLE_BOX (box), NULL, spell->text, spell->todo, spell->todo_source);
}

static gboolean
is_open (SteadCoolerCard *self,
         gint64           id)
{
  for (guint i = 0; i < self->air->spells->len; i++)
    {
      const SteadWarmSpell *spell = self->air->spells->pdata[i];

      if (spell->last->id == id)
        return spell->done == NULL;
    }
  return FALSE;
}

static void
show_past (SteadCoolerCard      *self,
           const SteadWarmSpell *spell)
{
  /* Translators: what was too warm, and what was done about it. */
  g_autofree char *text = g_strdup_printf (_("%1$s What was done: %2$s"), spell->text, spell->done);

  gtk_box_append (GTK_BOX (self->past), stead_make_label (text, NULL));
}

static void
show_spells (SteadCoolerCard *self)
{
  GtkWidget *box = gtk_widget_get_first_child (self->open);

  while (box != NULL)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (box);

      if (!is_open (self, stead_settle_box_get_id (STEAD_SETTLE_BOX (box))))
        gtk_box_remove (GTK_BOX (self->open), box);
      box = next;
    }
  stead_make_clear (self->past);
  for (guint i = 0; i < self->air->spells->len; i++)
    {
      const SteadWarmSpell *spell = self->air->spells->pdata[i];

      if (spell->done == NULL)
        show_open (self, spell);
      else
        show_past (self, spell);
    }
  gtk_widget_set_visible (self->open, gtk_widget_get_first_child (self->open) != NULL);
  gtk_widget_set_visible (self->past, gtk_widget_get_first_child (self->past) != NULL);
}

/* --- what was read ------------------------------------------------------------------------- */

static void
correct_cb (SteadCoolerCard *self,
            GtkButton       *button)
{
  const SteadAirRow *row = g_object_get_data (G_OBJECT (button), "row");

  stead_cooler_entry_correct (self->entry, row->id, row->text);
}

/* @rows: that row's owner, which lives as long as the button */
static void
add_row (SteadCoolerCard *self,
         GPtrArray       *rows,
         SteadAirRow     *row)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *button;
  g_autofree char *name = NULL;

  gtk_widget_set_layout_manager (line, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (line), stead_make_label (row->text, row->wrong ? "done" : NULL));
  gtk_box_append (GTK_BOX (self->rows), line);
  if (row->wrong)
    return;
  button = gtk_button_new_with_label (_("Correct"));
  /* Translators: a reading: "52 °F on November 3, 7:40 AM", the name of a cooler. */
  name = g_strdup_printf (_("Correct %1$s of %2$s"), row->text, self->name);
  gtk_widget_add_css_class (button, "link");
  stead_ui_name (button, name);
  g_object_set_data (G_OBJECT (button), "row", row);
  g_object_set_data_full (G_OBJECT (button), "rows", g_ptr_array_ref (rows), (GDestroyNotify) g_ptr_array_unref);
  g_signal_connect_object (button, "clicked", G_CALLBACK (correct_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (line), button);
}

/* Only while it can be seen. */
static void
show_history (SteadCoolerCard *self)
{
  g_autoptr(GPtrArray) rows = NULL;

  stead_make_clear (self->rows);
  if (self->air == NULL || !gtk_expander_get_expanded (GTK_EXPANDER (self->history)))
    return;
  rows = stead_place_air_rows (self->air, MOST_ROWS);
  for (guint i = 0; i < rows->len; i++)
    add_row (self, rows, rows->pdata[i]);
}

static void
make_history (SteadCoolerCard *self)
{
  /* Translators: the name of a cooler. */
  g_autofree char *name = g_strdup_printf (_("What was read of %s"), self->name);

  self->history = gtk_expander_new (_("What was read, and correcting it"));
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  stead_ui_name (self->history, name);
  stead_ui_expander_set_child (self->history, self->rows);
  g_signal_connect_swapped (self->history, "notify::expanded", G_CALLBACK (show_history), self);
}

/* --- showing -------------------------------------------------------------------------------- */

void
stead_cooler_card_show (SteadCoolerCard     *self,
                        SteadPlaceAirAnswer *air)
{
  g_autofree char *title = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  g_return_if_fail (STEAD_IS_COOLER_CARD (self) && air != NULL);

  stead_cooler_entry_show (self->entry, air);
  g_clear_pointer (&self->air, stead_place_air_answer_free);
  self->air = air;
  show_spells (self);
  show_history (self);
  gtk_widget_set_visible (self->history, air->readings->len > 0);
  stead_make_say (self->sentence, air->sentence, FALSE);
  whys = stead_place_air_answer_whys (air);
  stead_why_box_set (self->whys, whys);
  stead_make_say (self->source, air->readings->len > 0 ? air->source : NULL, FALSE);
  if (air->warns)
    gtk_widget_add_css_class (GTK_WIDGET (self->sentence), "warn");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->sentence), "warn");
  gtk_widget_set_visible (GTK_WIDGET (self->chart), is_drawn (self));
  /* Translators: the name of a cooler: what a chart is. */
  title = g_strdup_printf (_("The air of %s"), self->name);
  stead_chart_area_set_file_name (self->chart, title);
  stead_chart_area_describe (self->chart, title, air->sentence);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

gint64
stead_cooler_card_get (SteadCoolerCard *self)
{
  g_return_val_if_fail (STEAD_IS_COOLER_CARD (self), 0);
  return self->place_id;
}

/* --- the object --------------------------------------------------------------------------------- */

static void
stead_cooler_card_init (SteadCoolerCard *self)
{
}

static void
stead_cooler_card_dispose (GObject *object)
{
  SteadCoolerCard *self = STEAD_COOLER_CARD (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->air, stead_place_air_answer_free);
  g_clear_pointer (&self->name, g_free);
  g_clear_object (&self->person);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_cooler_card_parent_class)->dispose (object);
}

static void
stead_cooler_card_class_init (SteadCoolerCardClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_cooler_card_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

GtkWidget *
stead_cooler_card_new (SteadDesk       *desk,
                       SteadPersonPick *person,
                       gint64           place_id,
                       const char      *name)
{
  SteadCoolerCard *self = g_object_new (STEAD_TYPE_COOLER_CARD, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  self->desk = g_object_ref (desk);
  self->person = g_object_ref (person);
  self->place_id = place_id;
  self->name = g_strdup (name);
  gtk_widget_add_css_class (box, "card");
  self->sentence = GTK_LABEL (stead_make_label ("", "sentence"));
  self->source = GTK_LABEL (stead_make_label ("", "soft"));
  gtk_widget_add_css_class (GTK_WIDGET (self->source), "small");
  self->chart = STEAD_CHART_AREA (stead_chart_area_new ());
  stead_chart_area_set_paint (self->chart, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->chart, step_cb);
  gtk_widget_set_size_request (GTK_WIDGET (self->chart), -1, CHART_HEIGHT);
  self->entry = STEAD_COOLER_ENTRY (stead_cooler_entry_new (desk, person, place_id, name));
  self->open = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  self->past = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (box), stead_make_label (name, "title"));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->sentence));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->chart));
  gtk_box_append (GTK_BOX (box), stead_why_box_new_folded (&self->whys));
  gtk_box_append (GTK_BOX (box), self->open);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->entry));
  make_history (self);
  gtk_box_append (GTK_BOX (box), self->history);
  gtk_box_append (GTK_BOX (box), self->past);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->source));
  gtk_widget_set_parent (box, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}
