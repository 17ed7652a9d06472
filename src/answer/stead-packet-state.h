/* stead-packet-state.h - "How much of this student's packet is there?" */
#pragma once

#include "answer/stead-packet-answer.h"

G_BEGIN_DECLS

typedef struct
{
  int n_there;   /* sections of which something is recorded */
  int n_all;
} SteadPacketState;

/**
 * stead_packet_state_of:
 * @person_id: a student; the student's own packet counts, or the usual one where none is made yet
 * @source: (nullable): shared with others of a class
 *
 * It makes the packet, so it takes some hundredths of a second.
 */
gboolean stead_packet_state_of (SteadStore         *store,
                                gint64              person_id,
                                SteadPacketSource  *source,
                                SteadPacketState   *out,
                                GError            **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
