/** The screen in Spanish: seasons, charts, the plan, the shared project. */
import type { PlanningWords } from './en-planning.ts';

export const PLANNING_ES: PlanningWords = {
  split: {
    toggle: 'Dos temporadas',
    earlier: (day: string) => `Mapa de la temporada anterior, al ${day}`,
  },
  charts: {
    figures: 'Las cifras',
    open: 'Gráficos',
    title: 'Gráficos',
    wait: 'Calculando …',
    noSeason: 'Ninguna temporada anterior fue calificada: aún no hay con qué comparar.',
  },
  sharing: {
    title: 'Proyecto compartido',
    saved: 'Proyecto compartido: cada cambio se guarda en él.',
    sending: (count: number) => `${count} cambio${count === 1 ? '' : 's'} en camino al proyecto …`,
    waiting: (count: number) =>
      count === 0
        ? 'El servidor no responde. Siga trabajando: los cambios se guardan aquí y se envían cuando responda.'
        : `El servidor no responde. ${count} cambio${count === 1 ? ' se guarda aquí y se envía' : 's se guardan aquí y se envían'} cuando responda.`,
    refusedCount: (count: number) =>
      `${count} cambio${count === 1 ? '' : 's'} sin aceptar por el servidor; solo en este navegador. Deshaga o exporte las capas.`,
    refused: (tree: string, why: string) => `El cambio de ${tree} no fue aceptado. ${why}`,
    gone: 'El registro ya no existe.',
    changedMeanwhile: (tree: string) =>
      `Alguien acaba de cambiar ${tree}. Si guarda lo suyo, ambas versiones se conservan hasta que alguien decida.`,
    conflictNow: (tree: string) => `Otra persona cambió ${tree} antes. Se conservan ambas versiones: decida más abajo.`,
    conflicts: (count: number) =>
      `${count} registro${count === 1 ? '' : 's'} cambiado${count === 1 ? '' : 's'} por dos personas`,
    conflictLead: 'Nada se ha sobrescrito. Compare las dos y elija; la otra queda en el historial del registro.',
    stands: 'Como está',
    given: (by: string) => `Lo que quiso ${by}`,
    deleted: 'retirado',
    outlineField: 'contorno',
    points: (count: number) => `${count} puntos`,
    at: 'en el tronco',
    take: 'Tomar el cambio',
    drop: 'Dejar como está',
    showPlace: 'Mostrar en el mapa',
  },
};
