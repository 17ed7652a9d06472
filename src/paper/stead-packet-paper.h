/* stead-packet-paper.h - packets of a whole class, one after another.
 *
 * A run makes one PDF a step, so that a window can breathe between two of them, and what
 * all packets share is read once.  Files that are there already are replaced only by whole
 * new ones.
 */
#pragma once

#include "answer/stead-packet-answer.h"

G_BEGIN_DECLS

typedef struct _SteadPacketRun SteadPacketRun;

/**
 * stead_packet_run_new:
 * @folder: is made if it is not there
 *
 * Each saved packet, and the usual one of this school year for each student who is still
 * here and has none.
 *
 * Returns: (transfer full): %NULL with @error if there is nobody, or the folder cannot be made
 */
SteadPacketRun *stead_packet_run_new    (SteadStore  *store,
                                         const char  *folder,
                                         GError     **error) G_GNUC_WARN_UNUSED_RESULT;
void            stead_packet_run_free   (SteadPacketRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPacketRun, stead_packet_run_free)

/* Makes the next one.  %FALSE with @error if it failed; the run may go on. */
gboolean        stead_packet_run_step   (SteadPacketRun  *run,
                                         GError         **error) G_GNUC_WARN_UNUSED_RESULT;
guint           stead_packet_run_count  (const SteadPacketRun *run);
guint           stead_packet_run_done   (const SteadPacketRun *run);

G_END_DECLS
