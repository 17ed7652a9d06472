/* stead-shares-dialog.c - how a result is shared from now on.
 *
 * An agreement is added, never changed: what was agreed before stays for its days.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-shares-dialog.h"

#include "answer/stead-results-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/show/stead-show-picks.h"
#include "app/stead-field.h"

#define COLUMNS 3

struct _SteadSharesDialog
{
  SteadDialog parent_instance;

  gint64      enterprise_id;
  GPtrArray  *fields;    /* of SteadField, not owned; each with its "person" */

  SteadPick  *basis, *agreed_by;
  GtkWidget  *people;
};

G_DEFINE_FINAL_TYPE (SteadSharesDialog, stead_shares_dialog, STEAD_TYPE_DIALOG)

static gboolean
add_act (SteadStore  *store,
         gpointer     rule,
         GError     **error)
{
  return stead_share_repo_add (store, rule, error);
}

static gint64
person_of (gpointer field)
{
  return *(gint64 *) g_object_get_data (field, "person");
}

static gboolean
read_parts (SteadSharesDialog *self,
            SteadShareRule    *rule)
{
  double usual = rule->basis == STEAD_SHARE_HOURS ? 1 : 0, sum = 0;

  for (guint i = 0; i < self->fields->len; i++)
    {
      SteadSharePart part = { person_of (self->fields->pdata[i]), usual };

      if (!stead_field_read_number (self->fields->pdata[i], usual, &part.weight))
        return FALSE;
      if (!(part.weight >= 0))
        {
          stead_field_set_error (self->fields->pdata[i], _("A part is zero or more."));
          return FALSE;
        }
      sum += part.weight;
      if (part.weight != usual)
        g_array_append_val (rule->parts, part);
    }
  if (sum > 0)
    return TRUE;
  stead_pick_say (self->basis, _("Somebody must have a part of more than zero."), TRUE);
  return FALSE;
}

static gboolean
stead_shares_dialog_save (SteadDialog  *dialog,
                          GError      **error)
{
  SteadSharesDialog *self = STEAD_SHARES_DIALOG (dialog);
  g_autoptr(SteadShareRule) rule = g_new0 (SteadShareRule, 1);

  rule->parts = g_array_new (FALSE, FALSE, sizeof (SteadSharePart));
  rule->enterprise_id = self->enterprise_id;
  rule->from_on = stead_store_get_today (stead_desk_get_store (stead_dialog_get_desk (dialog)));
  rule->basis = (SteadShareBasis) (stead_pick_get (self->basis) - 1);
  rule->agreed_by = stead_pick_get (self->agreed_by);
  stead_pick_say (self->basis, NULL, FALSE);
  if (!read_parts (self, rule))
    return FALSE;
  return stead_desk_act (stead_dialog_get_desk (dialog), _("Shares agreed on"), add_act, rule, error);
}

static void
stead_shares_dialog_dispose (GObject *object)
{
  g_clear_pointer (&STEAD_SHARES_DIALOG (object)->fields, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_shares_dialog_parent_class)->dispose (object);
}

static void
stead_shares_dialog_class_init (SteadSharesDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_shares_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_shares_dialog_save;
}

static void
stead_shares_dialog_init (SteadSharesDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->fields = g_ptr_array_new ();
  self->basis = STEAD_PICK (stead_pick_new (_("Shared")));
  for (int basis = STEAD_SHARE_HOURS; basis <= STEAD_SHARE_FIXED; basis++)
    stead_pick_append (self->basis, basis + 1, stead_words_share_basis ((SteadShareBasis) basis));
  self->agreed_by = STEAD_PICK (stead_pick_new (_("Agreed with")));
  self->people = g_object_new (GTK_TYPE_GRID, "row-spacing", 6, "column-spacing", 18, "column-homogeneous", TRUE, NULL);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->basis));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->agreed_by));
  gtk_box_append (GTK_BOX (box), stead_make_label (_("By hours, a number makes each hour of somebody count more or less; empty is "
                                                     "1. By role or by fixed parts, it is how many parts somebody has; empty "
                                                     "is none."), NULL));
  gtk_box_append (GTK_BOX (box), self->people);
  g_object_set (self, "content", box, "default-width", 560, NULL);
}

void
stead_shares_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     enterprise_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadSharesDialog *self = g_object_new (STEAD_TYPE_SHARES_DIALOG, "title", _("Shares of the result"), "save-label",
                                          _("Agree"), NULL);
  g_autoptr(SteadShareRule) rule = stead_share_repo_get (store, enterprise_id, stead_store_get_today (store), NULL);
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  self->enterprise_id = enterprise_id;
  stead_pick_show (self->basis, rule != NULL ? (gint64) rule->basis + 1 : 1);
  stead_show_picks_advisors (self->agreed_by, store);
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      GtkWidget *field;

      if (person->role != STEAD_PERSON_STUDENT || person->left_on != STEAD_DAY_NONE)
        continue;
      field = stead_field_new (person->name, STEAD_FIELD_NUMBER);
      g_object_set_data_full (G_OBJECT (field), "person", g_memdup2 (&person->id, sizeof person->id), g_free);
      for (guint k = 0; rule != NULL && k < rule->parts->len; k++)
        if (g_array_index (rule->parts, SteadSharePart, k).person_id == person->id)
          stead_field_show_number (STEAD_FIELD (field), g_array_index (rule->parts, SteadSharePart, k).weight);
      gtk_grid_attach (GTK_GRID (self->people), field, (int) self->fields->len % COLUMNS, (int) self->fields->len / COLUMNS, 1, 1);
      g_ptr_array_add (self->fields, field);
    }
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
