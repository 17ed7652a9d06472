/* stead-statement-pane.c - the statements of a time, of the farm or of one part of it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-statement-pane.h"

#include "app/keep/stead-enterprise-dialog.h"
#include "app/keep/stead-pick.h"
#include "app/keep/stead-statement-sheet.h"
#include "app/stead-chips.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "store/stead-cash-repo.h"

/* In the order of the drop-down. */
enum { THIS_MONTH, LAST_MONTH, WEEKS_12, SCHOOL_YEAR, LAST_SCHOOL_YEAR };

struct _SteadStatementPane
{
  SteadPane            parent_instance;

  SteadStatementPart   part;
  SteadDay             from, to;
  char                *of;         /* (nullable): name of the part of the farm */
  SteadPick           *enterprise;
  SteadStatementSheet *sheet;
  GtkWidget           *period, *chips, *caution;
  SteadWhyBox         *whys;
};

G_DEFINE_FINAL_TYPE (SteadStatementPane, stead_statement_pane, STEAD_TYPE_PANE)

static void
read_period (SteadStatementPane *self)
{
  SteadDesk *desk = stead_pane_get_desk (STEAD_PANE (self));
  const SteadFarm *farm = stead_desk_get_farm (desk);
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  SteadDay year = stead_school_year_start (today, farm->school_year_month, farm->school_year_mday);
  int y, m, day;

  stead_day_split (today, &y, &m, &day);
  self->to = today;
  switch (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->period)))
    {
    case THIS_MONTH:
      self->from = today - day + 1;
      break;
    case LAST_MONTH:
      self->to = today - day;
      stead_day_split (self->to, &y, &m, &day);
      self->from = self->to - day + 1;
      break;
    case WEEKS_12:
      self->from = today - 12 * 7 + 1;
      break;
    case LAST_SCHOOL_YEAR:
      self->to = year - 1;
      self->from = stead_school_year_start (self->to, farm->school_year_month, farm->school_year_mday);
      break;
    case SCHOOL_YEAR:
    default:
      self->from = year;
      break;
    }
}

static void
show_enterprises (SteadStatementPane *self)
{
  g_autoptr(GPtrArray) all = stead_enterprise_repo_list (stead_pane_get_store (STEAD_PANE (self)), NULL);
  gint64 chosen = stead_pick_get (self->enterprise);

  stead_pick_clear (self->enterprise);
  stead_pick_append (self->enterprise, 0, _("The whole farm"));
  for (guint i = 0; all != NULL && i < all->len; i++)
    stead_pick_append (self->enterprise, ((SteadEnterprise *) all->pdata[i])->id,
                       ((SteadEnterprise *) all->pdata[i])->name);
  stead_pick_show (self->enterprise, chosen);
  gtk_widget_set_visible (GTK_WIDGET (self->enterprise), stead_pick_count (self->enterprise) > 1);
}

static void
stead_statement_pane_refresh (SteadPane *pane)
{
  SteadStatementPane *self = STEAD_STATEMENT_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStatementAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  read_period (self);
  show_enterprises (self);
  answer = stead_statement_answer_new (stead_pane_get_store (pane), self->from, self->to,
                                       stead_pick_get (self->enterprise), &error);
  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  gtk_label_set_text (GTK_LABEL (self->caution), answer != NULL && answer->caution != NULL ? answer->caution : "");
  gtk_widget_set_visible (self->caution, answer != NULL && answer->caution != NULL);
  g_free (self->of);
  self->of = answer != NULL ? g_strdup (answer->enterprise_name) : NULL;
  whys = answer != NULL ? stead_statement_answer_whys (answer) : g_ptr_array_new ();
  stead_why_box_set (self->whys, whys);
  stead_statement_sheet_set (self->sheet, stead_pane_get_desk (pane), g_steal_pointer (&answer), self->part);
}

static void
again_cb (SteadPane *pane)
{
  if (stead_pane_get_desk (pane) != NULL)
    stead_statement_pane_refresh (pane);
}

static void
part_cb (SteadStatementPane *self,
         gint64              id)
{
  self->part = (SteadStatementPart) (id - 1);
  again_cb (STEAD_PANE (self));
}

static void
print_cb (SteadPane *pane)
{
  SteadStatementPane *self = STEAD_STATEMENT_PANE (pane);

  stead_paper_dialog_show_days (GTK_WIDGET (pane), stead_pane_get_desk (pane), "statements", self->of,
                                self->from, self->to);
}

static void
new_part_cb (SteadPane *pane)
{
  stead_enterprise_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane),
                                stead_pick_get (STEAD_STATEMENT_PANE (pane)->enterprise));
}

static void
stead_statement_pane_finalize (GObject *object)
{
  g_free (STEAD_STATEMENT_PANE (object)->of);
  G_OBJECT_CLASS (stead_statement_pane_parent_class)->finalize (object);
}

static void
stead_statement_pane_class_init (SteadStatementPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_statement_pane_finalize;
  STEAD_PANE_CLASS (klass)->refresh = stead_statement_pane_refresh;
}

static GtkWidget *
make_head (SteadStatementPane *self)
{
  const char *periods[] = { _("This month"), _("Last month"), _("Last 12 weeks"), _("This school year"),
                            _("Last school year"), NULL };
  GtkWidget *head = g_object_new (GTK_TYPE_BOX, "layout-manager", stead_wrap_layout_new (), NULL);

  self->chips = stead_chips_new ();
  stead_ui_name (self->chips, _("Which statement"));
  for (int i = 0; i < STEAD_N_STATEMENT_PARTS; i++)
    stead_chips_append (STEAD_CHIPS (self->chips), i + 1, stead_statement_part_title ((SteadStatementPart) i));
  stead_chips_choose (STEAD_CHIPS (self->chips), 1);
  g_signal_connect_swapped (self->chips, "chosen", G_CALLBACK (part_cb), self);
  self->period = gtk_drop_down_new_from_strings (periods);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->period), SCHOOL_YEAR);
  stead_ui_name (self->period, _("Of which time"));
  stead_ui_name (gtk_widget_get_first_child (self->period), _("Of which time"));
  g_signal_connect_swapped (self->period, "notify::selected", G_CALLBACK (again_cb), self);
  self->enterprise = STEAD_PICK (stead_pick_new (NULL));
  gtk_widget_set_visible (gtk_widget_get_first_child (GTK_WIDGET (self->enterprise)), FALSE);
  g_object_set (self->enterprise, "label", _("Part of the farm"), NULL);
  g_signal_connect_swapped (self->enterprise, "changed", G_CALLBACK (again_cb), self);
  gtk_widget_set_parent (self->chips, head);
  gtk_widget_set_parent (self->period, head);
  gtk_widget_set_parent (GTK_WIDGET (self->enterprise), head);
  return head;
}

static void
stead_statement_pane_init (SteadStatementPane *self)
{
  SteadPane *pane = STEAD_PANE (self);
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  stead_pane_add_head (pane, make_head (self));
  self->sheet = STEAD_STATEMENT_SHEET (stead_statement_sheet_new ());
  self->caution = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->caution), 0);
  stead_ui_wrap (GTK_LABEL (self->caution));
  gtk_widget_add_css_class (self->caution, "caution");
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->sheet));
  gtk_box_append (GTK_BOX (body), self->caution);
  gtk_box_append (GTK_BOX (body), stead_why_box_new_low (&self->whys));
  stead_pane_add_body (pane, body);
  stead_pane_add_button (pane, _("Print or save…"), G_CALLBACK (print_cb));
  stead_pane_add_button (pane, _("Parts of the farm…"), G_CALLBACK (new_part_cb));
}
