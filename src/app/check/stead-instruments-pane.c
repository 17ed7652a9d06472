/* stead-instruments-pane.c - thermometers and meters, and what they showed when they were tried.
 *
 * What they showed is judged by the answer.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-instruments-pane.h"
#include "app/check/stead-instrument-dialog.h"
#include "app/check/stead-instrument-fields.h"
#include "app/check/stead-shown-act.h"

#include "answer/stead-instruments-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"

struct _SteadInstrumentsPane
{
  GtkWidget   parent_instance;

  SteadDesk  *desk;

  GtkWidget  *rows;
  SteadWhyBox *whys;
  SteadPick  *which, *bath;
  SteadField *shown;
  GtkLabel   *trouble;
  SteadInstrumentFields *fields;   /* of one more */
  GtkWidget  *try_card;
};

G_DEFINE_FINAL_TYPE (SteadInstrumentsPane, stead_instruments_pane, GTK_TYPE_WIDGET)

enum { ICE = 1, BOIL };

/* --- writing down ------------------------------------------------------------------------------ */

static gboolean
instrument_act (SteadStore *store,
                gpointer    data,
                GError    **error)
{
  return stead_instrument_repo_save (store, data, error);
}

static void
try_cb (SteadInstrumentsPane *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  SteadShown shown = { .at = stead_time_now (store), .instrument_id = stead_pick_get (self->which), .held_s = NAN,
                       .kind = (char *) (stead_pick_get (self->bath) == ICE ? STEAD_SHOWN_ICE_BATH : STEAD_SHOWN_BOILING_WATER) };
  const SteadUnit *unit = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  if (!stead_quantity_parse (stead_field_get_text (self->shown), STEAD_DIMENSION_TEMPERATURE,
                             stead_unit_default (STEAD_DIMENSION_TEMPERATURE, stead_desk_get_farm (self->desk)->units),
                             &shown.value, &unit, &error))
    {
      stead_field_set_error (self->shown, error->message);
      return;
    }
  shown.scale = g_str_equal (unit->id, "degC") ? 'C' : 'F';
  /* Translators: a step that can be undone; the name of a thermometer follows. */
  step = g_strdup_printf (_("trying “%s”"), stead_pick_get_text (self->which));
  if (!stead_desk_act (self->desk, step, stead_shown_act, &shown, &error))
    {
      stead_field_set_error (self->shown, error->message);
      return;
    }
  stead_field_set_text (self->shown, "");
}

static void
add_cb (SteadInstrumentsPane *self)
{
  g_autoptr(SteadInstrument) instrument = g_new0 (SteadInstrument, 1);
  g_autofree char *step = NULL;
  g_autoptr(GError) error = NULL;

  instrument->retired_on = STEAD_DAY_NONE;
  if (!stead_instrument_fields_read (self->fields, instrument,
                                     stead_desk_get_farm (self->desk)->units == STEAD_UNITS_US))
    return;
  /* Translators: a step that can be undone; the name of a thermometer follows. */
  step = g_strdup_printf (_("the instrument “%s”"), instrument->name);
  if (!stead_desk_act (self->desk, step, instrument_act, instrument, &error))
    {
      stead_instrument_fields_fail (self->fields, error->message);
      return;
    }
  stead_instrument_fields_clear (self->fields);
}

/* --- showing --------------------------------------------------------------------------------------- */

static void
change_cb (SteadInstrumentsPane *self,
           GtkWidget            *button)
{
  const gint64 *id = g_object_get_data (G_OBJECT (button), "id");

  stead_instrument_dialog_show (GTK_WIDGET (self), self->desk, *id);
}

static void
add_change (SteadInstrumentsPane  *self,
            GtkWidget             *box,
            const SteadInstrument *instrument)
{
  /* Translators: a button and the row of a list that it stands on: "Change… Winter market". */
  g_autofree char *name = g_strdup_printf (C_("button of a row", "%s %s"), _("Change…"), instrument->name);
  GtkWidget *link = stead_make_link (_("Change…"), name, G_CALLBACK (change_cb), self);
  GtkWidget *actions = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  g_object_set_data_full (G_OBJECT (link), "id", g_memdup2 (&instrument->id, sizeof instrument->id), g_free);
  gtk_widget_add_css_class (actions, "outdent");
  gtk_box_append (GTK_BOX (actions), link);
  gtk_box_append (GTK_BOX (box), actions);
}

static void
add_instrument (SteadInstrumentsPane      *self,
                const SteadInstrumentSaid *said)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), stead_make_label (said->name, "strong"));
  for (guint i = 0; i < said->tries->len; i++)
    {
      const SteadInstrumentTry *one = said->tries->pdata[i];

      gtk_box_append (GTK_BOX (box), stead_make_label (one->text, one->shown->corrected ? "done" : one->bad ? "warn" : NULL));
    }
  if (said->untried != NULL)
    gtk_box_append (GTK_BOX (box), stead_make_label (said->untried, "soft"));
  add_change (self, box, said->instrument);
  gtk_box_append (GTK_BOX (self->rows), box);
}

/* Those out of use stand last, so that one can be put back. */
static void
add_retired (SteadInstrumentsPane *self)
{
  g_autoptr(GPtrArray) all = stead_instrument_repo_list (stead_desk_get_store (self->desk), TRUE, NULL);

  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      const SteadInstrument *instrument = all->pdata[i];
      GtkWidget *box;
      g_autofree char *text = NULL;

      if (instrument->retired_on == STEAD_DAY_NONE)
        continue;
      box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
      /* Translators: the name of a thermometer. */
      text = g_strdup_printf (_("%s, no longer in use"), instrument->name);
      gtk_box_append (GTK_BOX (box), stead_make_label (text, "soft"));
      add_change (self, box, instrument);
      gtk_box_append (GTK_BOX (self->rows), box);
    }
}

void
stead_instruments_pane_refresh (SteadInstrumentsPane *self,
                                SteadDesk            *desk)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadInstrumentsAnswer) answer = stead_instruments_answer_new (stead_desk_get_store (desk), &error);
  g_autoptr(GPtrArray) whys = answer != NULL ? stead_instruments_answer_whys (answer) : g_ptr_array_new ();
  gint64 chosen = stead_pick_get (self->which);

  g_return_if_fail (STEAD_IS_INSTRUMENTS_PANE (self));

  g_set_object (&self->desk, desk);
  stead_make_clear (self->rows);
  stead_pick_clear (self->which);
  stead_make_say (self->trouble, answer != NULL ? answer->sentence : error->message, FALSE);
  for (guint i = 0; answer != NULL && i < answer->instruments->len; i++)
    {
      const SteadInstrumentSaid *said = answer->instruments->pdata[i];

      add_instrument (self, said);
      if (said->tried)
        stead_pick_append (self->which, said->instrument->id, said->instrument->name);
    }
  add_retired (self);
  stead_instrument_fields_fill (self->fields, stead_desk_get_store (desk));
  stead_why_box_set (self->whys, whys);
  stead_pick_show (self->which, chosen);
  gtk_widget_set_visible (self->try_card, stead_pick_count (self->which) > 0);
}

/* --- the object ---------------------------------------------------------------------------------- */

static void
stead_instruments_pane_dispose (GObject *object)
{
  SteadInstrumentsPane *self = STEAD_INSTRUMENTS_PANE (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_instruments_pane_parent_class)->dispose (object);
}

static void
stead_instruments_pane_class_init (SteadInstrumentsPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_instruments_pane_dispose;
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

static void
add_save (SteadInstrumentsPane *self,
          GtkWidget            *card,
          const char           *label,
          GCallback             clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (card), button);
}

static GtkWidget *
add_row (GtkWidget *card)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (card), row);
  return row;
}

static void
make_try (SteadInstrumentsPane *self,
          GtkWidget            *box)
{
  GtkWidget *row;

  self->try_card = add_card (box, _("Try a thermometer"));
  row = add_row (self->try_card);
  self->which = STEAD_PICK (stead_pick_new (_("Which one")));
  self->bath = STEAD_PICK (stead_pick_new (_("In what")));
  stead_pick_append (self->bath, ICE, _("Melting ice"));
  stead_pick_append (self->bath, BOIL, _("Boiling water"));
  stead_pick_show (self->bath, ICE);
  self->shown = STEAD_FIELD (stead_field_new (_("What it shows"), STEAD_FIELD_TEXT));
  g_signal_connect_swapped (self->shown, "activate", G_CALLBACK (try_cb), self);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->which));
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->bath));
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->shown));
  add_save (self, self->try_card, _("Record the try"), G_CALLBACK (try_cb));
}

static void
make_form (SteadInstrumentsPane *self,
           GtkWidget            *box)
{
  GtkWidget *card = add_card (box, _("One more instrument"));

  self->fields = STEAD_INSTRUMENT_FIELDS (stead_instrument_fields_new ());
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->fields));
  add_save (self, card, _("Save the instrument"), G_CALLBACK (add_cb));
}

static void
stead_instruments_pane_init (SteadInstrumentsPane *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *card;

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_margin_end (box, 6);
  card = add_card (box, _("Instruments in use"));
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  self->trouble = GTK_LABEL (stead_make_label ("", NULL));
  gtk_box_append (GTK_BOX (card), self->rows);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (card), stead_why_box_new_folded (&self->whys));
  make_try (self, box);
  make_form (self, box);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}
