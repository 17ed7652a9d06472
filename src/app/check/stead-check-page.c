/* stead-check-page.c - the place Check: checklists, and what they were read for.
 *
 * Left the lists, those about which something is to be done first; right the chosen one.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-check-page.h"

#include "answer/stead-check-days-answer.h"
#include "app/check/stead-ask-dialog.h"
#include "app/check/stead-checklist-view.h"
#include "app/check/stead-coolers-pane.h"
#include "app/check/stead-drill-pane.h"
#include "app/check/stead-instruments-pane.h"
#include "app/check/stead-limits-pane.h"
#include "app/check/stead-month-pane.h"
#include "app/check/stead-pots-view.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"

struct _SteadCheckPage
{
  SteadPage           parent_instance;

  gint64              list_id;   /* shown; 0: none */
  gint64              line_id;   /* of which the pots are shown; 0: the list */
  gboolean            quiet;     /* the code fills the list, not the person */

  SteadChips         *chips;
  GtkStack           *stack, *side;
  GtkWidget          *add, *month_scroller;
  GtkListBox         *lists;
  SteadChecklistView *view;
  SteadPotsView      *pots;
  SteadMonthPane     *month;
  SteadCoolersPane   *coolers;
  SteadInstrumentsPane *instruments;
  SteadLimitsPane    *limits;
  SteadDrillPane     *drill;
};

G_DEFINE_FINAL_TYPE (SteadCheckPage, stead_check_page, STEAD_TYPE_PAGE)

/* In the order of the chips; chip ids count from 1. */
enum { LISTS = 1, MONTH, COOLERS, INSTRUMENTS, LIMITS, DRILL };

/* Groups of lists, in the order in which they stand. */
enum { TODAY, UNDER_WAY, SIGNED };

#define AROUND_DAYS 400   /* lists of more than a year ago are found in the month of their day */

/* --- the lists ------------------------------------------------------------------------- */

static int
group_of (const SteadCheckList *list,
          SteadDay              today)
{
  if (list->signed_at != STEAD_TIME_NONE)
    return SIGNED;
  return list->day <= today ? TODAY : UNDER_WAY;
}

static char *
head_text (const SteadCheckList *list)
{
  g_autofree char *day = stead_day_format (list->day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *open = NULL;

  if (list->signed_at != STEAD_TIME_NONE)
    /* Translators: a day. */
    return g_strdup_printf (_("%s: signed"), day);
  if (list->n_holds > 0 || list->n_stops > 0)
    /* Translators: a day. */
    return g_strdup_printf (_("%s: ⚠ held or stopped"), day);
  if (list->n_open == 0)
    /* Translators: a day. */
    return g_strdup_printf (_("%s: all read, not signed"), day);
  open = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d check open", "%d checks open", (gulong) list->n_open),
                          (int) list->n_open);
  /* Translators: a day, "3 checks open". */
  return g_strdup_printf (C_("checklist row", "%s: %s"), day, open);
}

static void
header_cb (GtkListBoxRow *row,
           GtkListBoxRow *before,
           gpointer       data)
{
  static const char * const heads[] = { N_("To be checked"), N_("Later"), N_("Signed") };
  int group = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (row), "group"));

  if (before != NULL && GPOINTER_TO_INT (g_object_get_data (G_OBJECT (before), "group")) == group)
    gtk_list_box_row_set_header (row, NULL);
  else
    gtk_list_box_row_set_header (row, stead_make_label (_(heads[group]), "heading"));
}

/* Those that are due by day, the oldest first; signed ones the newest first, as they come. */
static int
compare_heads (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  const SteadCheckList *one = *(const SteadCheckList * const *) a, *two = *(const SteadCheckList * const *) b;
  SteadDay today = *(const SteadDay *) data;
  int by_group = group_of (one, today) - group_of (two, today);
  int by_day = (one->day > two->day) - (one->day < two->day);

  if (by_group != 0)
    return by_group;
  if (by_day != 0)
    return group_of (one, today) == UNDER_WAY ? by_day : -by_day;
  return (one->id > two->id) - (one->id < two->id);
}

static void
fill_lists (SteadCheckPage *self,
            GPtrArray      *heads)
{
  SteadDay today = stead_store_get_today (stead_page_get_store (STEAD_PAGE (self)));
  GtkListBoxRow *chosen = NULL;

  g_ptr_array_sort_with_data (heads, compare_heads, &today);
  self->quiet = TRUE;
  stead_make_clear (GTK_WIDGET (self->lists));
  for (guint i = 0; i < heads->len; i++)
    {
      const SteadCheckList *list = heads->pdata[i];
      g_autofree char *text = head_text (list);
      GtkWidget *row = stead_make_row (list->id, list->name, text);

      g_object_set_data (G_OBJECT (row), "group", GINT_TO_POINTER (group_of (list, today)));
      gtk_list_box_append (self->lists, row);
      if (chosen == NULL || list->id == self->list_id)
        chosen = GTK_LIST_BOX_ROW (row);
    }
  self->list_id = chosen != NULL ? stead_make_row_id (GTK_WIDGET (chosen)) : 0;
  gtk_list_box_select_row (self->lists, chosen);
  self->quiet = FALSE;
}

/* The list, or the pots of one of its lines. */
static void
show_side (SteadCheckPage *self)
{
  SteadDesk *desk = stead_page_get_desk (STEAD_PAGE (self));

  if (self->line_id != 0 && !stead_pots_view_show (self->pots, desk, self->list_id, self->line_id))
    self->line_id = 0;
  gtk_stack_set_visible_child (self->side, self->line_id != 0 ? GTK_WIDGET (self->pots) : GTK_WIDGET (self->view));
  if (self->list_id != 0 && self->line_id == 0)
    stead_checklist_view_show (self->view, desk, self->list_id);
}

static void
row_cb (SteadCheckPage *self,
        GtkListBoxRow  *row)
{
  /* Filled anew, the list may choose the row again that has the focus: that is no choice. */
  if (self->quiet || row == NULL || stead_make_row_id (GTK_WIDGET (row)) == self->list_id)
    return;
  self->list_id = stead_make_row_id (GTK_WIDGET (row));
  self->line_id = 0;
  show_side (self);
}

static void
refresh_lists (SteadCheckPage *self)
{
  SteadDesk *desk = stead_page_get_desk (STEAD_PAGE (self));
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay today = stead_store_get_today (store);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) heads = stead_check_repo_list (store, today - AROUND_DAYS, today + AROUND_DAYS, &error);

  if (heads == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fill_lists (self, heads);
  gtk_widget_set_visible (self->add, heads->len > 0);
  gtk_stack_set_visible_child_name (self->stack, heads->len > 0 ? "lists" : "empty");
  show_side (self);
}

static void
new_cb (SteadCheckPage *self)
{
  stead_ask_dialog_show (GTK_WIDGET (self), stead_page_get_desk (STEAD_PAGE (self)), 0);
}

static void
pots_cb (SteadCheckPage *self,
         gint64          line_id)
{
  self->line_id = line_id;
  show_side (self);
}

static void
back_cb (SteadCheckPage *self)
{
  self->line_id = 0;
  show_side (self);
}

/* --- the page ----------------------------------------------------------------------------- */

static void
stead_check_page_refresh (SteadPage *page)
{
  SteadCheckPage *self = STEAD_CHECK_PAGE (page);
  SteadDesk *desk = stead_page_get_desk (page);
  gint64 view = stead_chips_get (self->chips);

  if (view == LISTS)
    {
      refresh_lists (self);
      return;
    }
  gtk_widget_hide (self->add);
  gtk_stack_set_visible_child (self->stack, view == MONTH ? self->month_scroller
                                            : view == COOLERS ? GTK_WIDGET (self->coolers)
                                            : view == INSTRUMENTS ? GTK_WIDGET (self->instruments)
                                            : view == LIMITS ? GTK_WIDGET (self->limits) : GTK_WIDGET (self->drill));
  if (view == MONTH)
    stead_pane_refresh (STEAD_PANE (self->month), desk);
  else if (view == COOLERS)
    stead_coolers_pane_refresh (self->coolers, desk);
  else if (view == INSTRUMENTS)
    stead_instruments_pane_refresh (self->instruments, desk);
  else if (view == LIMITS)
    stead_limits_pane_refresh (self->limits, desk);
  else
    stead_drill_pane_refresh (self->drill, desk);
}

static void
chosen_cb (SteadCheckPage *self,
           gint64          view)
{
  stead_page_invalidate (STEAD_PAGE (self));
}

/* Of what is held the list that holds it. */
static gint64
list_of_hold (SteadStore *store,
              gint64      hold_id)
{
  g_autoptr(GPtrArray) holds = stead_hold_repo_open (store, NULL);

  for (guint i = 0; holds != NULL && i < holds->len; i++)
    if (((const SteadHold *) holds->pdata[i])->id == hold_id)
      return ((const SteadHold *) holds->pdata[i])->list_id;
  return 0;
}

static void
stead_check_page_show (SteadPage  *page,
                       SteadTarget target,
                       gint64      id)
{
  SteadCheckPage *self = STEAD_CHECK_PAGE (page);
  gint64 list_id = target == STEAD_TARGET_HOLD ? list_of_hold (stead_page_get_store (page), id)
                   : target == STEAD_TARGET_CHECKLIST ? id : 0;

  if (list_id != 0)
    {
      self->list_id = list_id;
      self->line_id = 0;
    }
  stead_chips_choose (self->chips, target == STEAD_TARGET_COOLER ? COOLERS : LISTS);
  stead_page_invalidate (page);
}

static void
stead_check_page_dispose (GObject *object)
{
  SteadCheckPage *self = STEAD_CHECK_PAGE (object);

  self->quiet = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_CHECK_PAGE);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_check_page_parent_class)->dispose (object);
}

static void
stead_check_page_class_init (SteadCheckPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHECKLIST_VIEW);
  g_type_ensure (STEAD_TYPE_CHIPS);
  g_type_ensure (STEAD_TYPE_COOLERS_PANE);
  g_type_ensure (STEAD_TYPE_DRILL_PANE);
  g_type_ensure (STEAD_TYPE_INSTRUMENTS_PANE);
  g_type_ensure (STEAD_TYPE_LIMITS_PANE);
  g_type_ensure (STEAD_TYPE_MONTH_PANE);
  g_type_ensure (STEAD_TYPE_POTS_VIEW);
  G_OBJECT_CLASS (klass)->dispose = stead_check_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_check_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = stead_check_page_show;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("check/stead-check-page.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, add);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, coolers);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, drill);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, instruments);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, limits);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, lists);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, month);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, month_scroller);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, pots);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, side);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, stack);
  gtk_widget_class_bind_template_child (widget_class, SteadCheckPage, view);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_cb);
  gtk_widget_class_bind_template_callback (widget_class, pots_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_cb);
}

static void
stead_check_page_init (SteadCheckPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->stack);
  stead_ui_hush_stack (self->side);
  stead_chips_append (self->chips, LISTS, _("Checklists"));
  stead_chips_append (self->chips, MONTH, _("Month"));
  stead_chips_append (self->chips, COOLERS, _("Coolers"));
  stead_chips_append (self->chips, INSTRUMENTS, _("Instruments"));
  stead_chips_append (self->chips, LIMITS, _("Limits of your own"));
  stead_chips_append (self->chips, DRILL, _("Recall drill"));
  stead_chips_choose (self->chips, LISTS);
  gtk_list_box_set_header_func (self->lists, header_cb, NULL, NULL);
}
