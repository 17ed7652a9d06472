/* stead-month-pane.c - a month of checks: what was read, what was not, and what was out of its limit.
 *
 * A calendar, and one row a list; a day opens its list.  Coolers stand between, each with
 * what its air does.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-month-pane.h"

#include "answer/stead-check-days-answer.h"
#include "app/check/stead-month-grid.h"
#include "app/make/stead-make-parts.h"
#include "app/raise/stead-month-words.h"
#include "app/stead-why-box.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"

#define TABLE_HEIGHT 220   /* least, where the whole pane scrolls */

struct _SteadMonthPane
{
  SteadPane   parent_instance;

  SteadDay    first;     /* of the month shown; STEAD_DAY_NONE: that of today */
  GtkLabel   *month;
  GtkWidget  *grid, *coolers;
  SteadTable *table;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadMonthPane, stead_month_pane, STEAD_TYPE_PANE)

/* --- the table ----------------------------------------------------------------------- */

static const SteadCheckDayList *
list_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static void
list_free (gpointer data)
{
  SteadCheckDayList *list = data;

  g_free (list->name);
  g_free (list->text);
  g_free (list);
}

static SteadCheckDayList *
list_copy (const SteadCheckDayList *list)
{
  SteadCheckDayList *copy = g_memdup2 (list, sizeof *list);

  copy->name = g_strdup (list->name);
  copy->text = g_strdup (list->text);
  return copy;
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (list_of (item)->day, STEAD_DAY_STYLE_LONG);
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (list_of (item)->name);
}

static char *
count_text (gint64 n)
{
  return n > 0 ? g_strdup_printf ("%" G_GINT64_FORMAT, n) : g_strdup ("");
}

static char *
read_text (gpointer item,
           gpointer data)
{
  return count_text (list_of (item)->n_readings);
}

static char *
open_text (gpointer item,
           gpointer data)
{
  return count_text (list_of (item)->n_open);
}

static char *
failed_text (gpointer item,
             gpointer data)
{
  return count_text (list_of (item)->n_failed);
}

static char *
state_text (gpointer item,
            gpointer data)
{
  return g_strdup (list_of (item)->text);
}

static int
compare_days (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return (list_of (a)->day > list_of (b)->day) - (list_of (a)->day < list_of (b)->day);
}

static void
activate_cb (gpointer item,
             gpointer data)
{
  stead_desk_jump (stead_pane_get_desk (data), STEAD_TARGET_CHECKLIST, list_of (item)->id);
}

static void
open_cb (SteadPane *pane)
{
  const SteadCheckDayList *list = stead_pane_get_chosen (pane);

  if (list != NULL)
    stead_desk_jump (stead_pane_get_desk (pane), STEAD_TARGET_CHECKLIST, list->id);
}

/* --- the month ------------------------------------------------------------------------- */

/* The first day of the month that lies @by months away. */
static SteadDay
month_away (SteadDay day,
            int      by)
{
  int year, month, mday;
  SteadDay first;

  stead_day_split (day, &year, &month, &mday);
  first = day - mday + 1;
  if (by < 0)
    return month_away (first - 1, by + 1);
  if (by > 0)
    return month_away (first + 31, by - 1);
  return first;
}

static void
show_month (SteadMonthPane *self)
{
  int year, month, mday;
  g_autofree char *text = NULL;

  stead_day_split (self->first, &year, &month, &mday);
  /* Translators: a month and its year: "March 2026". */
  text = g_strdup_printf (_("%s %d"), stead_month_words (month - 1), year);
  gtk_label_set_text (self->month, text);
}

static void
move (SteadMonthPane *self,
      int             by)
{
  SteadPane *pane = STEAD_PANE (self);

  self->first = month_away (self->first, by);
  stead_pane_refresh (pane, stead_pane_get_desk (pane));
}

static void
earlier_cb (SteadMonthPane *self)
{
  move (self, -1);
}

static void
later_cb (SteadMonthPane *self)
{
  move (self, 1);
}

/* --- coolers ---------------------------------------------------------------------------- */

static void
add_cooler (SteadMonthPane        *self,
            const SteadPlaceFacts *place,
            GError               **error)
{
  g_autoptr(SteadPlaceAirAnswer) air = stead_place_air_answer_new (stead_pane_get_store (STEAD_PANE (self)), place->id,
                                                                   STEAD_PLACE_AIR_DAYS, error);
  g_autofree char *text = NULL;

  if (air == NULL || air->readings->len == 0)
    return;
  /* Translators: the name of a place, and a sentence about its air. */
  text = g_strdup_printf (C_("cooler", "%s: %s"), place->name, air->sentence);
  gtk_box_append (GTK_BOX (self->coolers), stead_make_label (text, air->warns ? "warn" : NULL));
}

static void
show_coolers (SteadMonthPane *self)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) places = stead_place_repo_list (stead_pane_get_store (STEAD_PANE (self)), &error);

  stead_make_clear (self->coolers);
  for (guint i = 0; places != NULL && i < places->len && error == NULL; i++)
    add_cooler (self, places->pdata[i], &error);
  gtk_widget_set_visible (self->coolers, gtk_widget_get_first_child (self->coolers) != NULL);
}

/* --- the pane ------------------------------------------------------------------------------ */

static void
stead_month_pane_refresh (SteadPane *pane)
{
  SteadMonthPane *self = STEAD_MONTH_PANE (pane);
  SteadStore *store = stead_pane_get_store (pane);
  GPtrArray *lists = g_ptr_array_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckDaysAnswer) answer = NULL;
  g_autoptr(GListModel) model = NULL;

  if (self->first == STEAD_DAY_NONE)
    self->first = month_away (stead_store_get_today (store), 0);
  answer = stead_check_days_answer_new (store, self->first, month_away (self->first, 1) - 1, &error);
  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  for (guint i = 0; answer != NULL && i < answer->days->len; i++)
    {
      const SteadCheckDay *day = answer->days->pdata[i];

      for (guint n = 0; n < day->lists->len; n++)
        g_ptr_array_add (lists, list_copy (day->lists->pdata[n]));
    }
  if (answer != NULL)
    {
      g_autoptr(GPtrArray) whys = stead_check_days_answer_whys (answer);

      stead_why_box_set (self->whys, whys);
    }
  if (answer != NULL)
    stead_month_grid_show (STEAD_MONTH_GRID (self->grid), answer, stead_store_get_today (store));
  model = stead_rows_from_array (lists, list_free);
  stead_table_set_model (self->table, model);
  show_month (self);
  show_coolers (self);
}

static void
stead_month_pane_class_init (SteadMonthPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_month_pane_refresh;
}

static void
day_cb (SteadMonthPane *self,
        gint64          list_id)
{
  stead_desk_jump (stead_pane_get_desk (STEAD_PANE (self)), STEAD_TARGET_CHECKLIST, list_id);
}

static void
make_head (SteadMonthPane *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *earlier = gtk_button_new_with_label (_("Month before")), *later = gtk_button_new_with_label (_("Month after"));

  self->month = GTK_LABEL (stead_make_label ("", "title"));
  gtk_label_set_wrap (self->month, FALSE);
  g_signal_connect_swapped (earlier, "clicked", G_CALLBACK (earlier_cb), self);
  g_signal_connect_swapped (later, "clicked", G_CALLBACK (later_cb), self);
  gtk_box_append (GTK_BOX (row), earlier);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->month));
  gtk_box_append (GTK_BOX (row), later);
  self->grid = stead_month_grid_new ();
  gtk_widget_add_css_class (self->grid, "card");
  g_signal_connect_swapped (self->grid, "chosen", G_CALLBACK (day_cb), self);
  self->coolers = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), self->grid);
  gtk_box_append (GTK_BOX (box), self->coolers);
  gtk_box_append (GTK_BOX (box), stead_why_box_new_folded (&self->whys));
  stead_pane_add_head (STEAD_PANE (self), box);
}

static void
stead_month_pane_init (SteadMonthPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->first = STEAD_DAY_NONE;
  make_head (self);
  self->table = stead_pane_add_table (pane, _("Checklists of the month"));
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_days, self);
  stead_table_add_column (self->table, _("Checklist"), FALSE, FALSE, name_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Readings"), TRUE, FALSE, read_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Not read"), TRUE, FALSE, open_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Unanswered"), TRUE, FALSE, failed_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("How it stands"), FALSE, TRUE, state_text, NULL, NULL, self);
  gtk_widget_set_size_request (GTK_WIDGET (self->table), -1, TABLE_HEIGHT);
  stead_table_set_empty (self->table, _("No checklist in this month."));
  stead_table_set_activate (self->table, activate_cb, self);
  stead_pane_add_button (pane, _("Open the list"), G_CALLBACK (open_cb));
}
