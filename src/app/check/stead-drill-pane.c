/* stead-drill-pane.c - recall drills: a lot, everything it touched, everyone to call, and how long it took.
 *
 * A drill that is under way shows its sheet; one at a time.  What is found when people
 * look is typed in, and the drill is kept.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-drill-pane.h"

#include "answer/stead-recall-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-person-pick.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "store/stead-lot-repo.h"

/* Lots stand beside each other, as many as there is room for. */
#define ROW_WIDTH 230

struct _SteadDrillPane
{
  GtkWidget        parent_instance;

  SteadDesk       *desk;
  gint64           lot_id, drill_id;   /* of the sheet; 0: none */
  double           known_frac;         /* of the sheet */

  SteadPick       *lot;
  SteadPersonPick *person;
  GtkLabel        *sentence, *caution, *trouble;
  GtkWidget       *start, *start_box, *finish_box, *sheet, *rows, *calls, *past, *past_card;
  SteadField      *found, *note;
  SteadWhyBox     *whys, *past_whys;
};

G_DEFINE_FINAL_TYPE (SteadDrillPane, stead_drill_pane, GTK_TYPE_WIDGET)

/* --- writing down ---------------------------------------------------------------------- */

typedef struct
{
  gint64      id, lot_id, at, person_id;
  double      known_frac, found_frac;
  const char *note;
} Drill;

static gboolean
start_act (SteadStore *store,
           gpointer    data,
           GError    **error)
{
  Drill *drill = data;

  return stead_drill_repo_start (store, drill->lot_id, drill->at, drill->person_id, &drill->id, error);
}

static gboolean
finish_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  const Drill *drill = data;

  return stead_drill_repo_finish (store, drill->id, drill->at, drill->known_frac, drill->found_frac, drill->note, error);
}

static void
start_cb (SteadDrillPane *self)
{
  Drill drill = { .lot_id = stead_pick_get (self->lot), .at = stead_time_now (stead_desk_get_store (self->desk)),
                  .person_id = stead_person_pick_get (self->person) };
  g_autoptr(GError) error = NULL;

  if (!stead_desk_act (self->desk, _("the start of a recall drill"), start_act, &drill, &error))
    stead_make_say (self->trouble, error->message, FALSE);
}

static void
finish_cb (SteadDrillPane *self)
{
  Drill drill = { .id = self->drill_id, .at = stead_time_now (stead_desk_get_store (self->desk)),
                  .known_frac = self->known_frac, .found_frac = NAN };
  g_autoptr(GError) error = NULL;
  g_autofree char *note = g_strdup (stead_field_get_text (self->note));
  double found = NAN;

  if (!stead_field_read_number (self->found, NAN, &found))
    return;
  if (!isnan (found) && !(found >= 0 && found <= 1))
    {
      stead_field_set_error (self->found, _("Enter a share of 0 to 100 %."));
      return;
    }
  drill.found_frac = found;
  drill.note = note;
  if (!stead_desk_act (self->desk, _("the end of a recall drill"), finish_act, &drill, &error))
    {
      stead_make_say (self->trouble, error->message, FALSE);
      return;
    }
  stead_field_set_text (self->found, "");
  stead_field_set_text (self->note, "");
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_drill_repo_delete (store, *(const gint64 *) data, error);
}

static void
remove_drill (SteadDrillPane *self,
              gint64          id)
{
  g_autoptr(GError) error = NULL;

  if (!stead_desk_act (self->desk, _("deleting a recall drill"), remove_act, &id, &error))
    stead_make_say (self->trouble, error->message, FALSE);
}

static void
break_off_cb (SteadDrillPane *self)
{
  remove_drill (self, self->drill_id);
}

static void
remove_cb (SteadDrillPane *self,
           GtkWidget      *button)
{
  remove_drill (self, *(const gint64 *) g_object_get_data (G_OBJECT (button), "id"));
}

/* --- the sheet ------------------------------------------------------------------------------ */

static void
add_part (GtkWidget  *box,
          const char *text,
          const char *style)
{
  if (text != NULL)
    gtk_box_append (GTK_BOX (box), stead_make_label (text, style));
}

static void
add_row (SteadDrillPane       *self,
         const SteadRecallRow *row)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *share = stead_recall_share_text (row->known_frac);
  /* Translators: a share of what was made or received: "98 %". */
  g_autofree char *known = isnan (row->known_frac) ? NULL : g_strdup_printf (_("%s accounted for"), share);
  /* Translators: an amount that is still on the farm, and where. */
  g_autofree char *left = row->left != NULL ? g_strdup_printf (_("Still here: %s"), row->left) : NULL;
  /* Translators: an amount that was sold or given away. */
  g_autofree char *out = row->out != NULL ? g_strdup_printf (_("In other hands: %s"), row->out) : NULL;
  /* Translators: an amount that was lost or thrown away. */
  g_autofree char *gone = row->gone != NULL ? g_strdup_printf (_("Gone: %s"), row->gone) : NULL;

  gtk_widget_set_size_request (box, ROW_WIDTH, -1);
  add_part (box, row->name, "strong");
  add_part (box, left, NULL);
  add_part (box, out, NULL);
  add_part (box, gone, NULL);
  add_part (box, known, "soft");
  if (row->is_held)
    add_part (box, _("Held back from sale and from use."), "warn");
  gtk_box_append (GTK_BOX (self->rows), box);
}

static void
show_sheet (SteadDrillPane *self)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRecallAnswer) answer = self->lot_id == 0 ? NULL
    : stead_recall_answer_new (stead_desk_get_store (self->desk), self->lot_id, self->drill_id, &error);
  g_autoptr(GPtrArray) whys = NULL;

  stead_make_clear (self->rows);
  stead_make_clear (self->calls);
  gtk_widget_set_visible (self->sheet, answer != NULL);
  if (answer == NULL)
    {
      stead_make_say (self->sentence, error != NULL ? error->message
                      : _("Choose a lot, start the clock, and find all of it: what it touched, who has it, who must be called."),
                      FALSE);
      stead_make_say (self->caution, NULL, FALSE);
      return;
    }
  self->known_frac = answer->known_frac;
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->caution, answer->caution, FALSE);
  for (guint i = 0; i < answer->rows->len; i++)
    add_row (self, answer->rows->pdata[i]);
  whys = stead_recall_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
  for (guint i = 0; i < answer->calls->len; i++)
    {
      const SteadRecallCall *call = answer->calls->pdata[i];

      gtk_box_append (GTK_BOX (self->calls), stead_make_label (call->who, "strong"));
      for (guint n = 0; n < call->whys->len; n++)
        gtk_box_append (GTK_BOX (self->calls), stead_make_label (call->whys->pdata[n], NULL));
    }
}

/* --- drills that were kept ---------------------------------------------------------------------- */

static void
add_remove (SteadDrillPane   *self,
            const SteadDrill *drill,
            const char       *text)
{
  /* Translators: a button and the row of a list that it stands on: "Change… Winter market". */
  g_autofree char *name = g_strdup_printf (C_("button of a row", "%s %s"), _("Delete the drill"), text);
  GtkWidget *link = stead_make_link (_("Delete the drill"), name, G_CALLBACK (remove_cb), self);
  GtkWidget *actions = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  g_object_set_data_full (G_OBJECT (link), "id", g_memdup2 (&drill->id, sizeof drill->id), g_free);
  gtk_widget_add_css_class (actions, "outdent");
  gtk_box_append (GTK_BOX (actions), link);
  gtk_box_append (GTK_BOX (self->past), actions);
}

static void
add_past (SteadDrillPane   *self,
          const SteadDrill *drill)
{
  g_autofree char *day = stead_day_format (stead_time_day (drill->started_at), STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *minutes = stead_number_format (stead_drill_minutes (drill), 0);
  g_autofree char *known = isnan (drill->known_frac) ? g_strdup ("?") : stead_recall_share_text (drill->known_frac);
  /* Translators: a day, an item, the code of its lot, minutes, a share. */
  g_autofree char *text = g_strdup_printf (_("%s: %s, lot %s, %s min, %s accounted for"), day, drill->item_name,
                                           drill->lot_code, minutes, known);

  gtk_box_append (GTK_BOX (self->past), stead_make_label (text, NULL));
  if (drill->note != NULL)
    gtk_box_append (GTK_BOX (self->past), stead_make_label (drill->note, "soft"));
  add_remove (self, drill, text);
}

static void
show_drills (SteadDrillPane *self,
             GPtrArray      *drills)
{
  const SteadDrill *running = NULL;
  g_autoptr(GPtrArray) whys = stead_drills_whys (drills);

  stead_make_clear (self->past);
  for (guint i = 0; i < drills->len; i++)
    {
      const SteadDrill *drill = drills->pdata[i];

      if (drill->ended_at == STEAD_TIME_NONE)
        running = drill;
      else
        add_past (self, drill);
    }
  stead_why_box_set (self->past_whys, whys);
  self->lot_id = running != NULL ? running->lot_id : stead_pick_get (self->lot);
  self->drill_id = running != NULL ? running->id : 0;
  gtk_widget_set_visible (self->start_box, running == NULL);
  gtk_widget_set_visible (self->finish_box, running != NULL);
  gtk_widget_set_visible (self->past_card, gtk_widget_get_first_child (self->past) != NULL);
}

static void
fill_lots (SteadDrillPane *self,
           GPtrArray      *lots)
{
  gint64 chosen = stead_pick_get (self->lot);

  stead_pick_clear (self->lot);
  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      /* Translators: an item, the code of its lot. */
      g_autofree char *text = g_strdup_printf (C_("lot", "%s, %s"), lot->item_name, lot->code);

      stead_pick_append (self->lot, lot->id, text);
    }
  stead_pick_show (self->lot, chosen);
  gtk_widget_set_sensitive (self->start, lots->len > 0);
}

static void
lot_cb (SteadDrillPane *self)
{
  self->lot_id = stead_pick_get (self->lot);
  show_sheet (self);
}

void
stead_drill_pane_refresh (SteadDrillPane *self,
                          SteadDesk      *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (store, TRUE, &error);
  g_autoptr(GPtrArray) drills = lots != NULL ? stead_drill_repo_list (store, &error) : NULL;

  g_return_if_fail (STEAD_IS_DRILL_PANE (self));

  g_set_object (&self->desk, desk);
  stead_make_say (self->trouble, error != NULL ? error->message : NULL, FALSE);
  if (drills == NULL)
    return;
  stead_person_pick_fill (self->person, store);
  fill_lots (self, lots);
  show_drills (self, drills);
  show_sheet (self);
}

/* --- the object ---------------------------------------------------------------------------------- */

static void
stead_drill_pane_dispose (GObject *object)
{
  SteadDrillPane *self = STEAD_DRILL_PANE (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_drill_pane_parent_class)->dispose (object);
}

static void
stead_drill_pane_class_init (SteadDrillPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_drill_pane_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
add_card (GtkWidget  *box,
          const char *head)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (card), stead_make_label (head, "heading"));
  gtk_box_append (GTK_BOX (box), card);
  return card;
}

static GtkWidget *
wrapped (GtkWidget *box)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (box), row);
  return row;
}

static void
make_start (SteadDrillPane *self,
            GtkWidget      *box)
{
  GtkWidget *row;

  self->start_box = add_card (box, _("Start a drill"));
  row = wrapped (self->start_box);
  self->lot = STEAD_PICK (stead_pick_new (_("Lot that could be bad")));
  g_signal_connect_swapped (self->lot, "changed", G_CALLBACK (lot_cb), self);
  self->person = STEAD_PERSON_PICK (stead_person_pick_new ());
  stead_person_pick_set_above (self->person);
  self->start = gtk_button_new_with_label (_("Start the clock"));
  gtk_widget_add_css_class (self->start, "primary");
  gtk_widget_set_halign (self->start, GTK_ALIGN_START);
  g_signal_connect_swapped (self->start, "clicked", G_CALLBACK (start_cb), self);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->lot));
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->person));
  gtk_box_append (GTK_BOX (self->start_box), self->start);
}

static void
make_finish (SteadDrillPane *self,
             GtkWidget      *box)
{
  GtkWidget *stop = gtk_button_new_with_label (_("Stop the clock"));
  GtkWidget *remove = gtk_button_new_with_label (_("Delete the drill"));
  GtkWidget *buttons;

  self->finish_box = add_card (box, _("A drill is under way"));
  self->found = STEAD_FIELD (stead_field_new (_("Found when looked for, percent"), STEAD_FIELD_PERCENT));
  self->note = STEAD_FIELD (stead_field_new (_("What was learned"), STEAD_FIELD_TEXT));
  gtk_widget_add_css_class (stop, "primary");
  g_signal_connect_swapped (stop, "clicked", G_CALLBACK (finish_cb), self);
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (break_off_cb), self);
  gtk_box_append (GTK_BOX (self->finish_box), GTK_WIDGET (self->found));
  gtk_box_append (GTK_BOX (self->finish_box), GTK_WIDGET (self->note));
  buttons = wrapped (self->finish_box);
  gtk_box_append (GTK_BOX (buttons), stop);
  gtk_box_append (GTK_BOX (buttons), remove);
}

static void
make_sheet (SteadDrillPane *self,
            GtkWidget      *box)
{
  GtkWidget *card;

  self->sheet = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  card = add_card (self->sheet, _("What it touched"));
  self->rows = wrapped (card);
  gtk_box_append (GTK_BOX (card), stead_why_box_new_folded (&self->whys));
  card = add_card (self->sheet, _("Whom to call"));
  self->calls = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_box_append (GTK_BOX (card), self->calls);
  gtk_box_append (GTK_BOX (box), self->sheet);
}

static void
stead_drill_pane_init (SteadDrillPane *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_margin_end (box, 6);
  self->sentence = GTK_LABEL (stead_make_label ("", "sentence"));
  self->caution = GTK_LABEL (stead_make_label ("", "caution"));
  self->trouble = GTK_LABEL (stead_make_label ("", "warn"));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->sentence));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->trouble));
  make_start (self, box);
  make_finish (self, box);
  make_sheet (self, box);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->caution));
  self->past_card = add_card (box, _("Drills that were kept"));
  self->past = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->past_card), self->past);
  gtk_box_append (GTK_BOX (self->past_card), stead_why_box_new_folded (&self->past_whys));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
}
