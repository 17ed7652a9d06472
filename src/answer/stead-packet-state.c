/* stead-packet-state.c - "How much of this student's packet is there?" */
#include "config.h"

#include "answer/stead-packet-state.h"

/* (transfer full) */
static SteadPacket *
packet_of (SteadStore  *store,
           gint64       person_id,
           GError     **error)
{
  g_autoptr(GPtrArray) packets = stead_packet_repo_list (store, error);
  SteadPacket *packet;

  if (packets == NULL)
    return NULL;
  for (guint i = 0; i < packets->len; i++)
    if (((const SteadPacket *) packets->pdata[i])->person_id == person_id)
      return g_ptr_array_steal_index (packets, i);
  packet = stead_packet_usual (store, stead_store_get_today (store), error);
  if (packet != NULL)
    packet->person_id = person_id;
  return packet;
}

gboolean
stead_packet_state_of (SteadStore         *store,
                       gint64              person_id,
                       SteadPacketSource  *source,
                       SteadPacketState   *out,
                       GError            **error)
{
  g_autoptr(SteadPacket) packet = NULL;
  g_autoptr(SteadPacketAnswer) answer = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  packet = packet_of (store, person_id, error);
  answer = packet != NULL ? stead_packet_answer_of (store, packet, source, error) : NULL;
  if (answer == NULL)
    return FALSE;
  *out = (SteadPacketState) { (int) answer->parts->len - answer->n_blank, (int) answer->parts->len };
  return TRUE;
}
