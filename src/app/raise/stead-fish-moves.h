/* stead-fish-moves.h - what went out of a group of fish into others, and what came: each can be taken back. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FISH_MOVES (stead_fish_moves_get_type ())
G_DECLARE_FINAL_TYPE (SteadFishMoves, stead_fish_moves, STEAD, FISH_MOVES, GtkWidget)

/* Hides itself where no fish moved. */
void stead_fish_moves_show (SteadFishMoves *self, SteadDesk *desk, gint64 fish_id);

G_END_DECLS
