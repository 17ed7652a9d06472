/* stead-ask-row.c - one question, its answers as buttons. */
#include "config.h"

#include "app/check/stead-ask-row.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"

struct _SteadAskRow
{
  GtkWidget      parent_instance;

  SteadCheckKey  key;
  char          *food;     /* (nullable) */
  char         **words;    /* (nullable): of the answers, in the order of the chips; chip ids count from 1 */

  GtkLabel      *head, *question;
  SteadChips    *answers;
};

enum { ANSWERED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadAskRow, stead_ask_row, GTK_TYPE_WIDGET)

static void
chosen_cb (SteadAskRow *self)
{
  g_signal_emit (self, signals[ANSWERED], 0);
}

static void
stead_ask_row_dispose (GObject *object)
{
  SteadAskRow *self = STEAD_ASK_ROW (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->food, g_free);
  g_clear_pointer (&self->words, g_strfreev);
  G_OBJECT_CLASS (stead_ask_row_parent_class)->dispose (object);
}

static void
stead_ask_row_class_init (SteadAskRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_ask_row_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[ANSWERED] = g_signal_new ("answered", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 0);
}

static void
stead_ask_row_init (SteadAskRow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->head = GTK_LABEL (stead_make_label ("", "heading"));
  self->question = GTK_LABEL (stead_make_label ("", "strong"));
  self->answers = STEAD_CHIPS (stead_chips_new ());
  g_signal_connect_swapped (self->answers, "chosen", G_CALLBACK (chosen_cb), self);
  gtk_widget_set_margin_top (GTK_WIDGET (self->head), 12);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->head));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->question));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->answers));
  gtk_widget_set_parent (box, GTK_WIDGET (self));
}

GtkWidget *
stead_ask_row_new (void)
{
  return g_object_new (STEAD_TYPE_ASK_ROW, NULL);
}

/* An answer is read whole, however long it is. */
static void
unfold (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    {
      gtk_label_set_ellipsize (GTK_LABEL (widget), PANGO_ELLIPSIZE_NONE);
      gtk_label_set_max_width_chars (GTK_LABEL (widget), 60);
      stead_ui_wrap (GTK_LABEL (widget));
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    unfold (child);
}

static void
fill_answers (SteadAskRow           *self,
              const SteadCheckAsked *asked)
{
  if (self->words != NULL && g_strv_equal ((const char * const *) self->words, asked->question->words))
    return;
  g_strfreev (self->words);
  self->words = g_strdupv ((char **) asked->question->words);
  stead_chips_clear (self->answers);
  for (guint i = 0; i < asked->answers->len; i++)
    stead_chips_append (self->answers, i + 1, asked->answers->pdata[i]);
  unfold (GTK_WIDGET (self->answers));
}

void
stead_ask_row_show (SteadAskRow           *self,
                    const SteadCheckAsked *asked,
                    gboolean               with_food)
{
  gint64 chosen = 0;

  g_return_if_fail (STEAD_IS_ASK_ROW (self));

  self->key = asked->question->key;
  if (g_strcmp0 (self->food, asked->food) != 0)
    {
      g_free (self->food);
      self->food = g_strdup (asked->food);
    }
  stead_make_say (self->head, with_food ? asked->food : NULL, FALSE);
  gtk_label_set_text (self->question, asked->text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->answers), GTK_ACCESSIBLE_PROPERTY_LABEL, asked->text, -1);
  fill_answers (self, asked);
  for (guint i = 0; self->words[i] != NULL; i++)
    if (g_strcmp0 (self->words[i], asked->question->word) == 0)
      chosen = i + 1;
  if (chosen != stead_chips_get (self->answers))
    stead_chips_choose (self->answers, chosen);
}

gboolean
stead_ask_row_is (SteadAskRow           *self,
                  const SteadCheckAsked *asked)
{
  g_return_val_if_fail (STEAD_IS_ASK_ROW (self), FALSE);
  return self->words != NULL && self->key == asked->question->key && g_strcmp0 (self->food, asked->food) == 0;
}

SteadCheckAnswered
stead_ask_row_get (SteadAskRow *self)
{
  gint64 chosen = stead_chips_get (self->answers);

  return (SteadCheckAnswered) { self->key, self->food, chosen > 0 ? self->words[chosen - 1] : NULL };
}
