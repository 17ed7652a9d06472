/* stead-pot-card.c - one pot that cools: its chart, what to do and until when, and the next reading. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-pot-card.h"

#include "app/check/stead-check-entry.h"
#include "app/check/stead-pot-chart.h"
#include "app/check/stead-shown-act.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-import-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"

struct _SteadPotCard
{
  GtkWidget                parent_instance;

  SteadDesk               *desk;
  SteadPersonPick         *person;   /* of the view */
  SteadCheckAnswer        *answer;   /* of the view, as last shown */
  const SteadCheckedLine  *line;
  const SteadCheckPotRead *pot;

  GtkLabel                *title, *sentence, *action, *notes, *source, *caution;
  gint64                   wrong_id;   /* what is recorded next corrects this reading; 0: none */
  SteadPotChart           *chart;
  SteadCheckEntry         *entry;
  GtkWidget               *reads, *acts_box, *acts, *links, *import, *remove, *whys_box;
  SteadWhyBox             *whys;
};

G_DEFINE_FINAL_TYPE (SteadPotCard, stead_pot_card, GTK_TYPE_WIDGET)

/* --- what was read ------------------------------------------------------------------------ */

/* Whether the reading is one of this pot. */
static gboolean
is_read (SteadPotCard *self,
         gint64        id)
{
  gint64 pot_id = self->pot->pot != NULL ? self->pot->pot->id : 0;

  for (guint i = 0; i < self->line->reads->len; i++)
    {
      const SteadShown *shown = ((const SteadCheckRead *) self->line->reads->pdata[i])->shown;

      if (shown->id == id)
        return shown->pot_id == pot_id;
    }
  return FALSE;
}

/* A press corrects that reading with what is typed next; another press corrects nothing. */
static void
correct_cb (SteadPotCard *self,
            GtkButton    *button)
{
  gint64 id = *(gint64 *) g_object_get_data (G_OBJECT (button), "reading");

  self->wrong_id = self->wrong_id == id ? 0 : id;
  stead_pot_card_show (self, self->answer, self->line, self->pot);
  if (self->wrong_id != 0)
    stead_check_entry_focus (self->entry);
}

static void
add_correct (SteadPotCard     *self,
             GtkWidget        *line,
             const SteadShown *shown,
             const char       *text)
{
  gboolean chosen = shown->id == self->wrong_id;
  GtkWidget *button = gtk_button_new_with_label (chosen ? _("Correct nothing") : _("Correct"));
  /* Translators: a reading: "52 °F on November 3, 7:40 AM", the name of a cooler. */
  g_autofree char *correct = g_strdup_printf (_("Correct %1$s of %2$s"), text, self->pot->name);
  /* Translators: the name of a cooler. */
  g_autofree char *nothing = g_strdup_printf (_("Correct nothing of %s"), self->pot->name);

  gtk_widget_add_css_class (button, "link");
  stead_ui_name (button, chosen ? nothing : correct);
  g_object_set_data_full (G_OBJECT (button), "reading", g_memdup2 (&shown->id, sizeof shown->id), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (correct_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (line), button);
}

static void
add_read (SteadPotCard         *self,
          const SteadCheckRead *read)
{
  gboolean wrong = read->state == STEAD_READ_CORRECTED;
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *text = g_strdup_printf ("%s · %s%s%s", read->time, read->value, read->who != NULL ? " · " : "",
                                           read->who != NULL ? read->who : "");
  /* Translators: a reading, and what it means. */
  g_autofree char *whole = wrong ? g_strdup_printf (_("%s — wrong, corrected"), text) : g_strdup (text);

  gtk_widget_set_layout_manager (line, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (line), stead_make_label (whole, wrong ? "done" : "soft"));
  if (!wrong)
    add_correct (self, line, read->shown, text);
  gtk_box_append (GTK_BOX (self->reads), line);
  if (read->done != NULL)
    {
      g_autofree char *done = g_strdup_printf (_("What was done: %s"), read->done);

      gtk_box_append (GTK_BOX (self->reads), stead_make_label (done, NULL));
    }
}

/* The same numbers as the chart, in words. */
static void
show_reads (SteadPotCard *self)
{
  gint64 pot_id = self->pot->pot != NULL ? self->pot->pot->id : 0;

  stead_make_clear (self->reads);
  for (guint i = 0; i < self->line->reads->len; i++)
    if (((const SteadCheckRead *) self->line->reads->pdata[i])->shown->pot_id == pot_id)
      add_read (self, self->line->reads->pdata[i]);
}

/* --- writing down ----------------------------------------------------------------------- */

static void
show_entry (SteadPotCard *self)
{
  gboolean open = self->answer->list->signed_at == STEAD_TIME_NONE;

  gtk_widget_set_visible (GTK_WIDGET (self->entry), open || self->wrong_id != 0);
  stead_check_entry_set_corrects (self->entry, self->wrong_id != 0);
}

static void
read_cb (SteadPotCard *self)
{
  SteadShown shown = { .at = STEAD_TIME_NONE };
  SteadSolution none;
  g_autofree char *value = NULL, *step = NULL;
  g_autoptr(GError) error = NULL;

  if (!stead_check_entry_read (self->entry, self->answer, self->line, &shown, &none))
    return;
  shown.line_id = self->line->line->id;
  shown.pot_id = self->pot->pot != NULL ? self->pot->pot->id : 0;
  shown.kind = (char *) self->line->line->measure;
  shown.person_id = stead_person_pick_get (self->person);
  shown.instrument_id = self->line->line->instrument_id;
  shown.corrects_id = self->wrong_id;
  value = stead_check_value_text (&shown, self->line->line->unit, self->answer->farm->units);
  /* Translators: a step that can be undone: a reading "92 °F", the name of a pot. */
  step = g_strdup_printf (_("%s in “%s”"), value, self->pot->name);
  if (!stead_desk_act (self->desk, step, stead_shown_act, &shown, &error))
    stead_check_entry_complain (self->entry, error->message);
  else
    {
      self->wrong_id = 0;
      stead_pot_card_show (self, self->answer, self->line, self->pot);
      stead_check_entry_clear (self->entry);
      stead_check_entry_focus (self->entry);
    }
}

/* What is done answers the reading that shows a missed mark, or else the last one. */
static const SteadShown *
answered_reading (SteadPotCard *self)
{
  const GPtrArray *reads = self->line->reads;
  gint64 pot_id = self->pot->pot != NULL ? self->pot->pot->id : 0;
  const SteadShown *last = NULL;

  for (guint i = 0; i < reads->len; i++)
    {
      const SteadCheckRead *read = reads->pdata[i];

      if (read->state == STEAD_READ_CORRECTED || read->shown->pot_id != pot_id)
        continue;
      if (read->state == STEAD_READ_FAILED)
        return read->shown;
      last = read->shown;
    }
  return last;
}

static gboolean
done_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_done_repo_add (store, data, error);
}

static void
act_cb (GtkButton *button,
        gpointer   card)
{
  SteadPotCard *self = card;
  const SteadShown *last = answered_reading (self);
  const char *id = g_object_get_data (G_OBJECT (button), "action");
  SteadDone done = { .at = stead_time_now (stead_desk_get_store (self->desk)), .text = (char *) stead_cooling_action_name (id),
                     .person_id = stead_person_pick_get (self->person) };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone: the name of a pot. */
  g_autofree char *step = g_strdup_printf (_("what was done with “%s”"), self->pot->name);

  if (last == NULL)
    return;
  done.reading_id = last->id;
  done.at = MAX (done.at, last->at);
  if (!stead_desk_act (self->desk, step, done_act, &done, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
import_cb (SteadPotCard *self)
{
  if (self->pot != NULL && self->pot->pot != NULL)
    stead_import_dialog_show (GTK_WIDGET (self), self->desk, STEAD_IMPORT_POT, self->pot->pot->id);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_check_repo_delete_pot (store, *(const gint64 *) data, error);
}

static void
remove_cb (SteadPotCard *self)
{
  gint64 id = self->pot != NULL && self->pot->pot != NULL ? self->pot->pot->id : 0;
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  if (id == 0)
    return;
  /* Translators: a step that can be undone: the name of a pot. */
  step = g_strdup_printf (_("deleting the pot “%s”"), self->pot->name);
  if (!stead_desk_act (self->desk, step, remove_act, &id, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

/* --- showing --------------------------------------------------------------------------------- */

static void
add_act (SteadPotCard *self,
         const char   *id,
         gboolean      is_best)
{
  GtkWidget *button = gtk_button_new_with_label (stead_cooling_action_name (id));
  /* Translators: what was done with a pot, the name of the pot. */
  g_autofree char *name = g_strdup_printf (_("%s: done with %s"), stead_cooling_action_name (id), self->pot->name);

  stead_ui_name (button, name);
  g_object_set_data_full (G_OBJECT (button), "action", g_strdup (id), g_free);
  if (is_best)
    gtk_widget_add_css_class (button, "primary");
  g_signal_connect (button, "clicked", G_CALLBACK (act_cb), self);
  gtk_box_append (GTK_BOX (self->acts), button);
}

static void
show_acts (SteadPotCard *self)
{
  const SteadCoolingAnswer *cooling = self->pot->cooling;
  gboolean open = self->answer->list->signed_at == STEAD_TIME_NONE;

  stead_make_clear (self->acts);
  for (guint i = 0; cooling != NULL && i < cooling->actions->len; i++)
    add_act (self, g_array_index (cooling->actions, SteadPotAction, i).id, (int) i == cooling->best);
  gtk_widget_set_visible (self->acts_box, open && cooling != NULL && cooling->actions->len > 0
                                          && cooling->state != STEAD_POT_MET);
}

static void
show_whys (SteadPotCard *self)
{
  const SteadCoolingAnswer *cooling = self->pot->cooling;
  gboolean any = cooling != NULL && cooling->whys->len > 0;

  gtk_widget_set_visible (self->whys_box, any);
  if (any)
    stead_why_box_set (self->whys, cooling->whys);
}

static char *
notes_of (const SteadCoolingAnswer *cooling)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; cooling != NULL && i < cooling->notes->len; i++)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", (const char *) cooling->notes->pdata[i]);
  return g_string_free (text, FALSE);
}

static void
show_style (SteadPotCard *self)
{
  SteadPotState state = self->pot->cooling != NULL ? self->pot->cooling->state : STEAD_POT_WAITING;
  GtkWidget *label = GTK_WIDGET (self->sentence);

  gtk_widget_remove_css_class (label, "warn");
  if (state == STEAD_POT_ACT || state == STEAD_POT_TOO_LATE || state == STEAD_POT_LOOK || state == STEAD_POT_FAILED)
    gtk_widget_add_css_class (label, "warn");
}

void
stead_pot_card_show (SteadPotCard            *self,
                     SteadCheckAnswer        *answer,
                     const SteadCheckedLine  *line,
                     const SteadCheckPotRead *pot)
{
  const SteadCoolingAnswer *cooling = pot->cooling;
  g_autofree char *notes = notes_of (cooling);
  g_autofree char *import = NULL, *remove = NULL;
  gboolean own = pot->pot != NULL && answer->list->signed_at == STEAD_TIME_NONE;

  g_return_if_fail (STEAD_IS_POT_CARD (self));

  self->answer = answer;
  self->line = line;
  self->pot = pot;
  if (!is_read (self, self->wrong_id))
    self->wrong_id = 0;
  gtk_label_set_text (self->title, pot->name);
  stead_make_say (self->sentence, cooling != NULL ? cooling->sentence
                  : _("Read the middle of the pot, now and then every half hour. Three readings foretell the rest."), FALSE);
  stead_make_say (self->action, cooling != NULL ? cooling->action : NULL, FALSE);
  stead_make_say (self->notes, notes, FALSE);
  stead_make_say (self->source, cooling != NULL ? cooling->source : NULL, FALSE);
  stead_make_say (self->caution, cooling != NULL ? cooling->caution : NULL, FALSE);
  show_style (self);
  stead_pot_chart_show (self->chart, cooling, pot->name, answer->farm->units == STEAD_UNITS_METRIC);
  show_reads (self);
  show_acts (self);
  show_whys (self);
  stead_check_entry_show_pot (self->entry, answer, line, pot->name);
  show_entry (self);
  gtk_widget_set_visible (self->links, own);
  /* Translators: the name of a pot. */
  import = g_strdup_printf (_("Take a logger's readings of %s from a table"), pot->name);
  stead_ui_name (self->import, import);
  /* Translators: the name of a pot. */
  remove = g_strdup_printf (_("Delete the pot “%s”"), pot->name);
  stead_ui_name (self->remove, remove);
}

/* --- the object --------------------------------------------------------------------------------- */

static GtkLabel *
add_label (GtkWidget  *box,
           const char *style)
{
  GtkWidget *label = stead_make_label ("", style);

  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
stead_pot_card_init (SteadPotCard *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  gtk_widget_add_css_class (box, "card");
  self->title = add_label (box, "title");
  self->sentence = add_label (box, "sentence");
  self->action = add_label (box, "caution");
  self->acts_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  add_label (self->acts_box, "heading");
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_first_child (self->acts_box)), _("Press what you did"));
  self->acts = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_layout_manager (self->acts, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (self->acts_box), self->acts);
  gtk_box_append (GTK_BOX (box), self->acts_box);
  self->chart = STEAD_POT_CHART (stead_pot_chart_new ());
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->chart));
  self->entry = STEAD_CHECK_ENTRY (stead_check_entry_new ());
  g_signal_connect_swapped (self->entry, "read", G_CALLBACK (read_cb), self);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->entry));
  self->links = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_layout_manager (self->links, stead_wrap_layout_new ());
  gtk_widget_add_css_class (self->links, "outdent");
  self->import = stead_make_link (_("Take a logger's readings from a table (CSV)…"), "", G_CALLBACK (import_cb), self);
  self->remove = stead_make_link (_("Delete the pot"), "", G_CALLBACK (remove_cb), self);
  gtk_box_append (GTK_BOX (self->links), self->import);
  gtk_box_append (GTK_BOX (self->links), self->remove);
  gtk_box_append (GTK_BOX (box), self->links);
  self->reads = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (box), self->reads);
  self->whys_box = stead_why_box_new_folded (&self->whys);
  gtk_box_append (GTK_BOX (box), self->whys_box);
  self->notes = add_label (box, "soft");
  self->source = add_label (box, "soft");
  self->caution = add_label (box, "caution");
  gtk_widget_set_parent (box, GTK_WIDGET (self));
}

static void
stead_pot_card_dispose (GObject *object)
{
  SteadPotCard *self = STEAD_POT_CARD (object);

  self->pot = NULL;
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_pot_card_parent_class)->dispose (object);
}

static void
stead_pot_card_class_init (SteadPotCardClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_pot_card_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

GtkWidget *
stead_pot_card_new (SteadDesk       *desk,
                    SteadPersonPick *person)
{
  SteadPotCard *self = g_object_new (STEAD_TYPE_POT_CARD, NULL);

  self->desk = g_object_ref (desk);
  self->person = person;
  return GTK_WIDGET (self);
}
