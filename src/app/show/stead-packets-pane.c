/* stead-packets-pane.c - one packet: its sections, what they lack, and where figures come from. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-answer.h"
#include "answer/stead-packet-class.h"
#include "answer/stead-words.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/show/stead-packets-pane.h"
#include "app/show/stead-release-dialogs.h"
#include "app/stead-files.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-why-box.h"
#include "paper/stead-packet-paper.h"
#include "store/stead-release-repo.h"

struct _SteadPacketsPane
{
  SteadPickPane   parent_instance;

  GtkWidget      *progress;   /* of a run over the class */
  GtkWidget      *stop;
  SteadWhyBox    *whys;
  SteadTable     *table;
  SteadPacketRun *run;        /* (nullable) */
  char           *whom, *ground;   /* (nullable): who gets them, until it is in the log */
  guint           source, failed;
};

G_DEFINE_FINAL_TYPE (SteadPacketsPane, stead_packets_pane, STEAD_TYPE_PICK_PANE)

typedef struct
{
  guint        number;
  char        *title, *state, *lack;
  SteadTarget  target;
  gint64       target_id;
} Line;

static void
line_free (gpointer data)
{
  Line *line = data;

  g_free (line->title);
  g_free (line->state);
  g_free (line->lack);
  g_free (line);
}

static const Line *line_of (gpointer item) { return stead_row_get (STEAD_ROW (item)); }
static char *number_text (gpointer item, gpointer data) { return g_strdup_printf ("%u", line_of (item)->number); }
static char *title_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->title); }
static char *state_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->state); }
static char *lack_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->lack); }

static void
row_cb (gpointer item,
        gpointer data)
{
  const Line *line = line_of (item);
  SteadPacketsPane *self = data;
  SteadDesk *desk = stead_pane_get_desk (STEAD_PANE (self));

  if (line->target != STEAD_TARGET_NONE)
    stead_desk_jump (desk, line->target, line->target_id);
  else
    stead_packet_dialog_show (GTK_WIDGET (self), desk, stead_pick_pane_get (STEAD_PICK_PANE (self)));
}

static gboolean
stead_packets_pane_list (SteadPickPane  *pane,
                         SteadPick      *pick,
                         GError        **error)
{
  g_autoptr(GPtrArray) packets = stead_packet_repo_list (stead_pane_get_store (STEAD_PANE (pane)), error);

  for (guint i = 0; packets != NULL && i < packets->len; i++)
    stead_pick_append (pick, ((SteadPacket *) packets->pdata[i])->id, ((SteadPacket *) packets->pdata[i])->name);
  return packets != NULL;
}

static GListModel *
lines_of (const SteadPacketAnswer *answer)
{
  GPtrArray *lines = g_ptr_array_new ();

  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadPacketPart *part = answer->parts->pdata[i];
      Line *line = g_new0 (Line, 1);

      line->number = i + 1;
      line->title = g_strdup (part->title);
      line->state = g_strdup (part->is_blank ? C_("state of a section", "nothing recorded")
                                             : C_("state of a section", "✓ there"));
      line->lack = g_strdup (part->lack != NULL ? part->lack : "");
      line->target = part->target;
      line->target_id = part->target_id;
      g_ptr_array_add (lines, line);
    }
  return stead_rows_from_array (lines, line_free);
}

static void
stead_packets_pane_show_chosen (SteadPickPane *pane,
                                gint64         id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPacketAnswer) answer = stead_packet_answer_new (stead_pane_get_store (STEAD_PANE (pane)), id, NULL, &error);
  g_autoptr(GListModel) rows = NULL;

  stead_pane_say (STEAD_PANE (pane), answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  rows = lines_of (answer);
  stead_why_box_set (STEAD_PACKETS_PANE (pane)->whys, answer->whys);
  stead_table_set_model (STEAD_PACKETS_PANE (pane)->table, rows);
}

static void
stead_packets_pane_show_none (SteadPickPane *pane)
{
  g_autoptr(GPtrArray) none = g_ptr_array_new ();

  stead_pane_say (STEAD_PANE (pane), _("No packet is made yet."), NULL);
  stead_why_box_set (STEAD_PACKETS_PANE (pane)->whys, none);
  stead_pick_pane_empty (STEAD_PACKETS_PANE (pane)->table);
}

/* 0 after saying that there is no packet. */
static gint64
packet_of (SteadPane *pane)
{
  gint64 id = stead_pick_pane_get (STEAD_PICK_PANE (pane));

  if (id == 0)
    stead_desk_say (stead_pane_get_desk (pane), _("Make a packet first."), FALSE);
  return id;
}

static void
look_cb (SteadPane *pane)
{
  gint64 id = packet_of (pane);
  g_autoptr(SteadPacket) packet = id != 0 ? stead_packet_repo_get (stead_pane_get_store (pane), id, NULL) : NULL;

  if (packet != NULL)
    stead_paper_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), "packet", packet->name);
}

static void
figures_cb (SteadPane *pane)
{
  gint64 id = packet_of (pane);

  if (id != 0)
    stead_figures_window_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), id);
}

static void
edit_cb (SteadPane *pane)
{
  gint64 id = packet_of (pane);

  if (id != 0)
    stead_packet_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), id);
}

static void new_cb (SteadPane *pane) { stead_packet_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0); }

/* --- the whole class ------------------------------------------------------------------ */

static void
end_run (SteadPacketsPane *self)
{
  g_clear_handle_id (&self->source, g_source_remove);
  g_clear_pointer (&self->run, stead_packet_run_free);
  gtk_widget_set_visible (self->progress, FALSE);
  gtk_widget_set_visible (self->stop, FALSE);
}

static void
stop_cb (SteadPacketsPane *self)
{
  end_run (self);
  stead_desk_say (stead_pane_get_desk (STEAD_PANE (self)), _("Stopped. The packets made so far are in the folder."), FALSE);
}

static gboolean
release_act (SteadStore  *store,
             gpointer     data,
             GError     **error)
{
  SteadPacketsPane *self = data;
  g_autoptr(SteadPacketClass) leaving = stead_packet_class_new (store, error);
  g_autofree char *what = leaving != NULL ? stead_words_plain (leaving->sentence) : NULL;
  SteadRelease release = { .day = stead_store_get_today (store), .what = what, .to_whom = self->whom, .ground = self->ground };

  return leaving != NULL && stead_release_repo_add (store, &release, leaving->people, error);
}

/* As soon as the first one is in the folder: a run that is stopped has let something out, too. */
static void
write_down (SteadPacketsPane *self)
{
  g_autoptr(GError) error = NULL;

  if (self->whom == NULL)
    return;
  if (!stead_desk_act (stead_pane_get_desk (STEAD_PANE (self)), _("what left the farm"), release_act, self, &error))
    stead_files_tell (GTK_WIDGET (self), _("The packets are written, but they could not be written into the log."),
                      error->message);
  g_clear_pointer (&self->whom, g_free);
  g_clear_pointer (&self->ground, g_free);
}

/* One packet between two frames, so that the window goes on answering. */
static gboolean
step_cb (gpointer data)
{
  SteadPacketsPane *self = data;
  guint n = stead_packet_run_count (self->run);
  guint done = stead_packet_run_done (self->run);
  g_autofree char *text = NULL;

  if (done < n)
    {
      g_autoptr(GError) error = NULL;

      if (!stead_packet_run_step (self->run, &error))
        self->failed++;
      else
        write_down (self);
      /* Translators: how many packets are made, of how many. */
      text = g_strdup_printf (_("%1$u of %2$u packets"), done + 1, n);
      gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), (double) (done + 1) / n);
      gtk_progress_bar_set_text (GTK_PROGRESS_BAR (self->progress), text);
      return G_SOURCE_CONTINUE;
    }
  text = self->failed == 0
         ? g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u packet is in the folder.", "%u packets are in the folder.", n), n)
         : g_strdup_printf (_("%1$u of %2$u packets could not be made. Look at them one by one."), self->failed, n);
  self->source = 0;
  end_run (self);
  stead_desk_say (stead_pane_get_desk (STEAD_PANE (self)), text, FALSE);
  return G_SOURCE_REMOVE;
}

void
stead_packets_pane_run (SteadPacketsPane *self,
                        const char       *folder)
{
  SteadStore *store;
  g_autoptr(GError) error = NULL;

  g_return_if_fail (STEAD_IS_PACKETS_PANE (self) && folder != NULL);
  store = stead_pane_get_store (STEAD_PANE (self));
  if (self->run != NULL || store == NULL)
    return;
  self->run = stead_packet_run_new (store, folder, &error);
  if (self->run == NULL)
    {
      stead_desk_say (stead_pane_get_desk (STEAD_PANE (self)), error->message, FALSE);
      return;
    }
  self->failed = 0;
  gtk_widget_set_visible (self->progress, TRUE);
  gtk_widget_set_visible (self->stop, TRUE);
  self->source = g_idle_add_full (G_PRIORITY_LOW, step_cb, self, NULL);
}

gboolean
stead_packets_pane_is_running (SteadPacketsPane *self)
{
  g_return_val_if_fail (STEAD_IS_PACKETS_PANE (self), FALSE);
  return self->run != NULL;
}

static void
folder_cb (const char *path,
           gpointer    data)
{
  g_autoptr(SteadPacketsPane) self = data;

  if (path != NULL)
    stead_packets_pane_run (self, path);
}

/* Who gets them is known now. */
static void
allowed_cb (const char *whom,
            const char *ground,
            gpointer    data)
{
  SteadPacketsPane *self = data;
  SteadPane *pane = data;

  g_free (self->whom);
  self->whom = g_strdup (whom);
  g_free (self->ground);
  self->ground = g_strdup (ground);
  stead_files_save (GTK_WIDGET (pane), _("Folder for the packets of the class"), _("Packets"), folder_cb,
                    g_object_ref (pane));
}

static void
class_cb (SteadPane *pane)
{
  stead_class_release_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), allowed_cb, g_object_ref (pane),
                                   g_object_unref);
}

static void
stead_packets_pane_finalize (GObject *object)
{
  g_free (STEAD_PACKETS_PANE (object)->whom);
  g_free (STEAD_PACKETS_PANE (object)->ground);
  G_OBJECT_CLASS (stead_packets_pane_parent_class)->finalize (object);
}

static void
stead_packets_pane_dispose (GObject *object)
{
  SteadPacketsPane *self = STEAD_PACKETS_PANE (object);

  g_clear_handle_id (&self->source, g_source_remove);
  g_clear_pointer (&self->run, stead_packet_run_free);
  G_OBJECT_CLASS (stead_packets_pane_parent_class)->dispose (object);
}

static void
stead_packets_pane_class_init (SteadPacketsPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_packets_pane_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_packets_pane_finalize;
  STEAD_PICK_PANE_CLASS (klass)->list = stead_packets_pane_list;
  STEAD_PICK_PANE_CLASS (klass)->show_chosen = stead_packets_pane_show_chosen;
  STEAD_PICK_PANE_CLASS (klass)->show_none = stead_packets_pane_show_none;
}

static void
stead_packets_pane_init (SteadPacketsPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  stead_pick_pane_add_pick (STEAD_PICK_PANE (self), _("Packet"));
  self->progress = gtk_progress_bar_new ();
  gtk_progress_bar_set_show_text (GTK_PROGRESS_BAR (self->progress), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Packets of the class"), -1);
  gtk_widget_set_visible (self->progress, FALSE);
  stead_pane_add_head (pane, self->progress);
  self->stop = gtk_button_new_with_mnemonic (_("Stop"));
  gtk_widget_set_halign (self->stop, GTK_ALIGN_START);
  gtk_widget_set_visible (self->stop, FALSE);
  g_signal_connect_swapped (self->stop, "clicked", G_CALLBACK (stop_cb), self);
  stead_pane_add_head (pane, self->stop);
  stead_pane_add_head (pane, stead_why_box_new_low (&self->whys));
  self->table = stead_pane_add_table (pane, _("Sections of the packet"));
  stead_table_add_column (self->table, C_("contents of a packet", "No."), TRUE, FALSE, number_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("contents of a packet", "Section"), FALSE, TRUE, title_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of needs", "State"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of needs", "What to do"), FALSE, TRUE, lack_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("A packet gathers what the farm knows of a student or a team. Make the first one."));
  stead_table_set_activate (self->table, row_cb, self);
  stead_pane_add_button (pane, _("Look at the packet"), G_CALLBACK (look_cb));
  stead_pane_add_button (pane, _("Figures and entries"), G_CALLBACK (figures_cb));
  stead_pane_add_button (pane, _("Change the packet…"), G_CALLBACK (edit_cb));
  stead_pane_add_button (pane, _("New packet…"), G_CALLBACK (new_cb));
  stead_pane_add_button (pane, _("Packets of the class…"), G_CALLBACK (class_cb));
}
