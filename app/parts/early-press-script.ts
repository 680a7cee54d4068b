/**
 * Runs before anything is drawn: remembers what is pressed, chosen and typed until the page answers (`data-ready`). A
 * page that is drawn at build time can be pressed before its scripts are there.
 */
export const earlyPressScript = `(function(){var d=document.documentElement,q=window.earlyPresses=[];
function hear(e){if(d.dataset.ready!==undefined)return;var t=e.target;if(!t||!t.closest)return;
if(e.type==='keydown'){if(e.key!==' '||t.closest('input,textarea,select,button,a,summary'))return;e.preventDefault();q.push({kind:'space',target:document.body});return}
if(e.type==='click'){t=t.closest('button,input[type=radio],input[type=checkbox]');if(t)q.push({kind:'click',target:t});return}
if(e.type==='change'&&t.tagName!=='SELECT')return;
if(e.type==='input'&&(t.tagName==='SELECT'||/^(radio|checkbox)$/.test(t.type)))return;
if(e.type==='input')q=window.earlyPresses=q.filter(function(p){return p.kind!=='input'||p.target!==t});
q.push({kind:e.type,target:t,value:t.value})}
['click','input','change','keydown'].forEach(function(k){addEventListener(k,hear,true)})})()`;
