/* stead-month-grid.c - a month of checks as a calendar.
 *
 * A sign stands for each state beside its color: a check mark, a ring, a warning.  Days
 * with a list are buttons; others are numbers.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>

#include "app/check/stead-month-grid.h"
#include "app/show/stead-weekday.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"

#define DAYS 7

struct _SteadMonthGrid
{
  GtkWidget  parent_instance;

  GtkWidget *grid;
};

enum { CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadMonthGrid, stead_month_grid, GTK_TYPE_WIDGET)

#define LIST_KEY "stead-list"

/* 1 Monday to 7 Sunday: with which day a week begins here. */
static int
first_weekday (void)
{
  int first = nl_langinfo (_NL_TIME_FIRST_WEEKDAY)[0];
  gboolean from_monday = GPOINTER_TO_INT (nl_langinfo (_NL_TIME_WEEK_1STDAY)) == 19971201;

  /* @first counts from the day that the locale calls the first one: 1 is that day. */
  return (first - 1 + (from_monday ? 0 : 6)) % DAYS + 1;
}

static int
column_of (SteadDay day)
{
  return (stead_day_weekday (day) - first_weekday () + DAYS) % DAYS;
}

/* The list that a day is pressed for: the first that is not signed, else the first. */
static gint64
list_of (const SteadCheckDay *day)
{
  for (guint i = 0; i < day->lists->len; i++)
    if (!((const SteadCheckDayList *) day->lists->pdata[i])->is_signed)
      return ((const SteadCheckDayList *) day->lists->pdata[i])->id;
  return ((const SteadCheckDayList *) day->lists->pdata[0])->id;
}

static void
pressed_cb (GtkWidget *button)
{
  GtkWidget *grid = gtk_widget_get_ancestor (button, STEAD_TYPE_MONTH_GRID);
  const gint64 *list = g_object_get_data (G_OBJECT (button), LIST_KEY);

  if (grid != NULL)
    g_signal_emit (grid, signals[CHOSEN], 0, *list);
}

static const char *
style_of (SteadCheckDayState state)
{
  switch (state)
    {
    case STEAD_CHECK_DAY_FAILED: return "warn";
    case STEAD_CHECK_DAY_OPEN: return "strong";
    case STEAD_CHECK_DAY_HANDLED:
    case STEAD_CHECK_DAY_DONE: return "good";
    case STEAD_CHECK_DAY_NONE:
    default: return "soft";
    }
}

static GtkWidget *
label (const char *text,
       const char *style)
{
  GtkWidget *label = stead_make_label (text, style);

  gtk_label_set_wrap (GTK_LABEL (label), FALSE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.5);
  return label;
}

static GtkWidget *
new_cell (const SteadCheckDay *day,
          gboolean             today)
{
  int year, month, mday;
  g_autofree char *number = NULL;
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *button;

  stead_day_split (day->day, &year, &month, &mday);
  number = g_strdup_printf ("%d", mday);
  gtk_box_append (GTK_BOX (box), label (number, today ? "strong" : day->lists->len == 0 ? "soft" : NULL));
  gtk_box_append (GTK_BOX (box), label (day->mark, style_of (day->state)));
  if (day->lists->len == 0)
    {
      gtk_widget_set_margin_top (box, 6);
      gtk_widget_set_margin_bottom (box, 6);
      gtk_widget_set_tooltip_text (box, day->text);
      return box;
    }
  button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_set_tooltip_text (button, day->text);
  stead_ui_name (button, day->text);
  g_object_set_data_full (G_OBJECT (button), LIST_KEY, g_memdup2 ((gint64[]) { list_of (day) }, sizeof (gint64)), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (pressed_cb), NULL);
  return button;
}

/* Names of the days, in the order of the week here. */
static void
add_heads (SteadMonthGrid *self,
           SteadDay        day)
{
  SteadDay first = day - column_of (day);

  for (int i = 0; i < DAYS; i++)
    gtk_grid_attach (GTK_GRID (self->grid), label (stead_weekday_short (stead_day_weekday (first + i)), "soft"),
                     i, 0, 1, 1);
}

void
stead_month_grid_show (SteadMonthGrid             *self,
                       const SteadCheckDaysAnswer *answer,
                       SteadDay                    today)
{
  int row = 1;

  g_return_if_fail (STEAD_IS_MONTH_GRID (self) && answer != NULL);

  stead_make_clear (self->grid);
  add_heads (self, answer->from);
  for (guint i = 0; i < answer->days->len; i++)
    {
      const SteadCheckDay *day = answer->days->pdata[i];
      int column = column_of (day->day);

      if (column == 0 && i > 0)
        row++;
      gtk_grid_attach (GTK_GRID (self->grid), new_cell (day, day->day == today), column, row, 1, 1);
    }
}

static void
stead_month_grid_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_month_grid_parent_class)->dispose (object);
}

static void
stead_month_grid_class_init (SteadMonthGridClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_month_grid_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
stead_month_grid_init (SteadMonthGrid *self)
{
  GtkWidget *key = stead_make_label (_("✓ signed, all met · ↻ out of a limit, and something was done · ○ open · "
                                       "⚠ out of a limit, or held back"), "soft");

  gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 6);
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_homogeneous (GTK_GRID (self->grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  gtk_widget_add_css_class (key, "small");
  gtk_widget_set_parent (key, GTK_WIDGET (self));
}

GtkWidget *
stead_month_grid_new (void)
{
  return g_object_new (STEAD_TYPE_MONTH_GRID, NULL);
}
