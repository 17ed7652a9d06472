/* stead-class-pane.c - the class at a glance: one row a person, with hours and what is missing.
 *
 * How much of a packet is there takes time to find out: it is done between two frames, one
 * student after the other, while the window goes on answering.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-class-pane.h"

#include "answer/stead-class-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-packet-state.h"
#include "app/show/stead-class-charts.h"
#include "app/show/stead-person-dialog.h"
#include "app/stead-form.h"
#include "app/stead-import-dialog.h"
#include "app/stead-why-box.h"

struct _SteadClassPane
{
  SteadPane   parent_instance;

  gint64      n_skills;
  gint64      asked;      /* a person to show; 0: nobody */

  SteadTable        *table;
  SteadClassCharts  *charts;
  SteadWhyBox       *whys;
  GListModel        *model;     /* (nullable): of SteadRow with SteadClassRow */
  SteadPacketSource *source;    /* (nullable): while packets are looked at */
  guint              idle, next;
};

G_DEFINE_FINAL_TYPE (SteadClassPane, stead_class_pane, STEAD_TYPE_PANE)

static const SteadClassRow *
row_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (row_of (item)->person->name);
}

static char *
role_text (gpointer item,
           gpointer data)
{
  return g_strdup (stead_words_role (row_of (item)->person->role));
}

static char *
year_text (gpointer item,
           gpointer data)
{
  int year = row_of (item)->person->class_year;

  return year > 0 ? g_strdup_printf ("%d", year) : g_strdup ("");
}

static char *
groups_text (gpointer item,
             gpointer data)
{
  return g_strdup (row_of (item)->sums->groups != NULL ? row_of (item)->sums->groups : "");
}

static char *
hours_text (gpointer item,
            gpointer data)
{
  gint64 minutes = row_of (item)->sums->minutes;

  return minutes > 0 ? stead_hours_words (minutes) : g_strdup ("");
}

static char *
late_text (gpointer item,
           gpointer data)
{
  int n = row_of (item)->sums->n_late;

  return n > 0 ? g_strdup_printf ("%d", n) : g_strdup ("");
}

static char *
skills_text (gpointer item,
             gpointer data)
{
  SteadClassPane *self = data;

  if (self->n_skills == 0 || row_of (item)->person->role != STEAD_PERSON_STUDENT)
    return g_strdup ("");
  /* Translators: skills shown, of how many on the list. */
  return g_strdup_printf (C_("skills", "%1$d of %2$d"), row_of (item)->sums->n_skills, (int) self->n_skills);
}

static char *
packet_text (gpointer item,
             gpointer data)
{
  const SteadClassRow *row = row_of (item);

  if (row->packet_all == 0)
    return g_strdup ("");
  return g_strdup_printf (C_("skills", "%1$d of %2$d"), row->packet_there, row->packet_all);
}

static char *
needs_text (gpointer item,
            gpointer data)
{
  return g_strdup (row_of (item)->needs);
}

static int
compare_names (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  return g_utf8_collate (row_of (a)->person->name, row_of (b)->person->name);
}

static int
compare_hours (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  return (row_of (a)->sums->minutes > row_of (b)->sums->minutes) - (row_of (a)->sums->minutes < row_of (b)->sums->minutes);
}

static int
compare_skills (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  return row_of (a)->sums->n_skills - row_of (b)->sums->n_skills;
}

static int
compare_packets (gconstpointer a,
                 gconstpointer b,
                 gpointer      data)
{
  return row_of (a)->packet_there - row_of (b)->packet_there;
}

static int
compare_late (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return row_of (a)->sums->n_late - row_of (b)->sums->n_late;
}

/* --- buttons ---------------------------------------------------------------------------- */

static void
activate_cb (gpointer item,
             gpointer data)
{
  stead_person_dialog_show (GTK_WIDGET (data), stead_pane_get_desk (data), row_of (item)->person->id);
}

static void
add_cb (SteadPane *pane)
{
  stead_person_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0);
}

static void
change_cb (SteadPane *pane)
{
  const SteadClassRow *row = stead_pane_get_chosen (pane);

  if (row != NULL)
    stead_person_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), row->person->id);
}

static void
hours_cb (SteadPane *pane)
{
  const SteadClassRow *row = stead_pane_get_chosen (pane);

  if (row != NULL)
    stead_desk_jump (stead_pane_get_desk (pane), STEAD_TARGET_HOURS, row->person->id);
}

/* --- a name taken out ---------------------------------------------------------------- */

static gboolean
forget_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_person_repo_forget (store, *(gint64 *) data, error);
}

static gboolean
forget_save (SteadForm  *form,
             gpointer    data,
             GError    **error)
{
  /* Translators: a step's name; it does not say whose name was forgotten. */
  return stead_form_act (form, _("A name forgotten"), forget_act, data, error);
}

static void
forget_cb (SteadPane *pane)
{
  const SteadClassRow *row = stead_pane_get_chosen (pane);
  g_autofree char *text = NULL;
  SteadForm *form;

  if (row == NULL)
    return;
  text = g_strdup_printf (_("The name “%s” is taken out of the whole file, and the role with a number stands in its place. "
                            "Every figure stays. Earlier steps can then no longer be undone."), row->person->name);
  form = stead_form_new (_("Replace a name"), _("Replace the name"), NULL, forget_save, NULL,
                         g_memdup2 (&row->person->id, sizeof row->person->id), g_free);
  stead_form_add_text (form, text, NULL);
  stead_form_add_text (form, _("Dated copies beside the farm keep the name until they are deleted."), "soft");
  stead_dialog_present (STEAD_DIALOG (form), GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
import_cb (SteadPane *pane)
{
  stead_import_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), STEAD_IMPORT_PEOPLE, 0);
}

/* --- packets, one after the other ---------------------------------------------------------- */

static void
end_look (SteadClassPane *self)
{
  g_clear_handle_id (&self->idle, g_source_remove);
  g_clear_pointer (&self->source, stead_packet_source_free);
}

/* The row is put in its place again, so that it is sorted anew. */
static void
look_at (SteadClassPane *self,
         guint           at)
{
  g_autoptr(SteadRow) item = g_list_model_get_item (self->model, at);
  SteadClassRow *row = stead_row_get (item);
  gpointer again[] = { item };
  SteadPacketState state;

  if (row->person->role != STEAD_PERSON_STUDENT
      || !stead_packet_state_of (stead_pane_get_store (STEAD_PANE (self)), row->person->id, self->source, &state, NULL))
    return;
  row->packet_there = state.n_there;
  row->packet_all = state.n_all;
  stead_class_charts_set_packet (self->charts, row->person->id, state.n_there, state.n_all);
  g_list_store_splice (G_LIST_STORE (self->model), at, 1, again, 1);
  stead_table_write_again (self->table, item);
}

static gboolean
look_cb (gpointer data)
{
  SteadClassPane *self = data;

  if (stead_pane_get_store (STEAD_PANE (self)) != NULL && self->next < g_list_model_get_n_items (self->model))
    {
      look_at (self, self->next++);
      return G_SOURCE_CONTINUE;
    }
  self->idle = 0;
  end_look (self);
  return G_SOURCE_REMOVE;
}

static void
begin_look (SteadClassPane *self)
{
  end_look (self);
  self->next = 0;
  self->source = stead_packet_source_new ();
  self->idle = g_idle_add_full (G_PRIORITY_LOW, look_cb, self, NULL);
}

/* --- the pane ---------------------------------------------------------------------------- */

/* The row of who was asked for, before anybody sorts the table anew. */
static guint
asked_row (SteadClassPane         *self,
           const SteadClassAnswer *answer)
{
  for (guint i = 0; i < answer->rows->len; i++)
    if (((const SteadClassRow *) answer->rows->pdata[i])->person->id == self->asked)
      return i;
  return GTK_INVALID_LIST_POSITION;
}

static void
stead_class_pane_refresh (SteadPane *pane)
{
  SteadClassPane *self = STEAD_CLASS_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadClassAnswer) answer = stead_class_answer_new (stead_pane_get_store (pane), &error);
  g_autoptr(GListModel) model = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  guint asked;

  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  self->n_skills = answer->n_skills;
  asked = asked_row (self, answer);
  stead_class_charts_show (self->charts, answer);
  whys = stead_class_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
  model = stead_rows_from_array (g_steal_pointer (&answer->rows), (GDestroyNotify) stead_class_row_free);
  stead_table_set_model (self->table, model);
  if (asked != GTK_INVALID_LIST_POSITION)
    stead_table_select (self->table, asked);
  self->asked = 0;
  g_set_object (&self->model, model);
  begin_look (self);
}

static void
stead_class_pane_dispose (GObject *object)
{
  SteadClassPane *self = STEAD_CLASS_PANE (object);

  end_look (self);
  g_clear_object (&self->model);
  G_OBJECT_CLASS (stead_class_pane_parent_class)->dispose (object);
}

static void
stead_class_pane_show (SteadPane   *pane,
                       SteadTarget  target,
                       gint64       id)
{
  STEAD_CLASS_PANE (pane)->asked = id;
}

static void
stead_class_pane_class_init (SteadClassPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_class_pane_dispose;
  STEAD_PANE_CLASS (klass)->refresh = stead_class_pane_refresh;
  STEAD_PANE_CLASS (klass)->show = stead_class_pane_show;
}

static void
stead_class_pane_init (SteadClassPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->charts = STEAD_CLASS_CHARTS (stead_class_charts_new ());
  stead_pane_add_head (pane, GTK_WIDGET (self->charts));
  stead_pane_add_head (pane, stead_why_box_new_low (&self->whys));
  self->table = stead_pane_add_table (pane, _("The class"));
  stead_table_add_column (self->table, _("Name"), FALSE, FALSE, name_text, NULL, compare_names, self);
  stead_table_add_column (self->table, _("Role"), FALSE, FALSE, role_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Class of"), TRUE, FALSE, year_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Groups"), FALSE, FALSE, groups_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Hours"), TRUE, FALSE, hours_text, NULL, compare_hours, self);
  stead_table_add_column (self->table, _("Late"), TRUE, FALSE, late_text, NULL, compare_late, self);
  stead_table_add_column (self->table, _("Skills"), TRUE, FALSE, skills_text, NULL, compare_skills, self);
  stead_table_add_column (self->table, C_("column of the class", "Packet"), TRUE, FALSE, packet_text, NULL, compare_packets, self);
  stead_table_add_column (self->table, _("What is missing"), FALSE, TRUE, needs_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Nobody is entered yet. The names of those who work on the farm belong here, "
                                        "so that the log can say who did what."));
  stead_table_set_activate (self->table, activate_cb, self);
  stead_pane_add_button (pane, _("New person…"), G_CALLBACK (add_cb));
  stead_pane_add_button (pane, _("Change person…"), G_CALLBACK (change_cb));
  stead_pane_add_button (pane, _("Hours of this person"), G_CALLBACK (hours_cb));
  stead_pane_add_button (pane, _("Import a class list…"), G_CALLBACK (import_cb));
  stead_pane_add_button (pane, _("Replace a name…"), G_CALLBACK (forget_cb));
}
