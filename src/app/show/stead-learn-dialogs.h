/* stead-learn-dialogs.h - the dialogs of skills, events and packets. */
#pragma once

#include "answer/stead-packet-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* In each: an id of 0 is a new one.  What is there already can be changed and removed. */

/* A skill of the school's list. */
void stead_skill_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 skill_id);
/* A try of a skill, with the row of the log that shows it. */
void stead_try_dialog_show    (GtkWidget *parent, SteadDesk *desk, gint64 person_id, gint64 skill_id, gint64 try_id);
/* @words: of the skill */
void stead_try_check_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 try_id, const char *words);
/* A thought, on a question that is open if there is one. */
void stead_thought_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 person_id, gint64 thought_id);
void stead_goal_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 person_id, gint64 goal_id);
void stead_role_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 person_id, gint64 role_id);
/* A picture with its caption, and who is on it.  A new one is chosen first. */
void stead_shot_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 person_id, gint64 shot_id);
/* @event_id: 0: a new one, which is filled with what its kind usually needs */
void stead_event_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 event_id);
void stead_member_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 event_id);
void stead_score_dialog_show  (GtkWidget *parent, SteadDesk *desk, gint64 event_id);
/* @need_id: 0: a new one */
void stead_need_dialog_show   (GtkWidget *parent, SteadDesk *desk, gint64 event_id, gint64 need_id);
/* @packet_id: 0: a new one */
void stead_packet_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 packet_id);
/* Every figure of the packet with the entries that make it; each leads to its place. */
void stead_figures_window_show (GtkWidget *parent, SteadDesk *desk, gint64 packet_id);

G_END_DECLS
